#include "geom/sheet/sheet_scale.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "geom/units/text.hpp"

namespace yardwright {

namespace {

constexpr double inches_per_foot = 12;
constexpr std::array us_ratios{10 * 12.0,  20 * 12.0,  30 * 12.0,  40 * 12.0,  50 * 12.0,  60 * 12.0,
                               100 * 12.0, 200 * 12.0, 300 * 12.0, 400 * 12.0, 500 * 12.0, 1000 * 12.0};
constexpr std::array metric_ratios{100.0, 200.0, 250.0, 500.0, 1000.0, 1250.0, 2000.0, 2500.0, 5000.0, 10000.0};
constexpr double least_ratio = 1, most_ratio = 1e6;

/// A length on one side of "1 in = 40 ft", or a bare number.
tl::expected<double, Problem> side_m(std::string_view text) {
  auto value = parse_quantity(text, Quantity::length, UnitSystem::metric);
  if (!value && text.find("in") != text.npos) value = parse_quantity(text, Quantity::small_length, UnitSystem::us);
  return value;
}

}  // namespace

std::span<const double> standard_scale_ratios(UnitSystem units) {
  if (units == UnitSystem::us) return us_ratios;
  return metric_ratios;
}

double scale_ratio_that_fits(double ground_width_m, double ground_height_m, double paper_width_mm,
                             double paper_height_mm, UnitSystem units) {
  const double needed = std::max(ground_width_m / paper_width_mm, ground_height_m / paper_height_mm) * 1000;
  for (const double ratio : standard_scale_ratios(units)) {
    if (ratio >= needed) return ratio;
  }
  double ratio = standard_scale_ratios(units).back();
  while (ratio < needed) ratio *= 2;
  return ratio;
}

std::string scale_words(double ratio, UnitSystem units) {
  if (units == UnitSystem::us) return fmt::format("1 in = {:.6g} ft", ratio / inches_per_foot);
  return fmt::format("1:{:.6g}", ratio);
}

tl::expected<double, Problem> parse_scale(std::string_view text) {
  const Problem not_a_scale{fmt::format("\"{}\" is no scale", text), "scale", "give one like 1in=40ft or 1:500"};
  const std::size_t sign = text.find_first_of("=:/");
  if (sign == text.npos) return tl::unexpected{not_a_scale};
  const auto paper = side_m(text.substr(0, sign)), ground = side_m(text.substr(sign + 1));
  if (!paper || !ground || *paper <= 0) return tl::unexpected{not_a_scale};
  const double ratio = *ground / *paper;
  if (!(ratio >= least_ratio && ratio <= most_ratio)) return tl::unexpected{not_a_scale};
  return ratio;
}

}  // namespace yardwright
