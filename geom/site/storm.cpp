#include "geom/site/storm.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <sstream>

#include "geom/units/text.hpp"

namespace yardwright {

namespace {

constexpr double hour_s = 3600, day_s = 24 * hour_s;
constexpr std::size_t most_points = 2000;
constexpr const char* example = "write times and shares: 0 0, 6h 0.08, 12h 0.66, 24h 1";

tl::unexpected<Problem> refusal(std::string what, std::string mend) {
  return tl::unexpected{Problem{std::move(what), "", std::move(mend)}};
}

std::optional<double> plain_number(const std::string& text) {
  std::istringstream words{text};
  double value = 0;
  if (words >> value && words.eof() && std::isfinite(value)) return value;
  return std::nullopt;
}

/// Bare numbers are hours.
std::optional<double> time_of(const std::string& text) {
  if (const auto hours = plain_number(text)) return *hours * hour_s;
  const auto seconds = parse_quantity(text, Quantity::duration, UnitSystem::metric);
  return seconds ? std::optional{*seconds} : std::nullopt;
}

tl::expected<MassPoint, Problem> point_of(const std::string& text) {
  std::istringstream words{text};
  std::string time, share, more;
  words >> time >> share;
  if (share.empty() || words >> more) return refusal(fmt::format("\"{}\" is no time with a share", text), example);
  const auto time_s = time_of(time);
  if (!time_s) return refusal(fmt::format("\"{}\" is no time", time), "write hours, or a time with its unit: 6, 90min");
  const auto ratio = plain_number(share);
  if (!ratio || *ratio < 0 || *ratio > 1)
    return refusal(fmt::format("\"{}\" is no share of the rain", share), "give a number from 0 to 1");
  return MassPoint{*time_s, *ratio};
}

std::string hours_text(double time_s) { return fmt::format("{:.6g} h", time_s / hour_s); }

/// What is wrong with the points as a whole.
std::optional<Problem> fault_of(const std::vector<MassPoint>& points) {
  if (points.size() < 2 || points.size() > most_points)
    return Problem{fmt::format("the table has {} points", points.size()), "", "give 2 to 2000 of them"};
  if (points.front() != MassPoint{})
    return Problem{"the table does not begin with nothing fallen", "", "begin with 0 0"};
  for (std::size_t i = 1; i < points.size(); ++i) {
    if (points[i].time_s <= points[i - 1].time_s)
      return Problem{fmt::format("{} comes after {}", hours_text(points[i].time_s), hours_text(points[i - 1].time_s)),
                     "", "give the times in rising order"};
    if (points[i].fallen_ratio < points[i - 1].fallen_ratio)
      return Problem{fmt::format("the share falls from {:g} to {:g} at {}", points[i - 1].fallen_ratio,
                                 points[i].fallen_ratio, hours_text(points[i].time_s)),
                     "", "give shares that do not fall: each is all that has fallen by then"};
  }
  if (points.back().fallen_ratio != 1)
    return Problem{fmt::format("the table ends at a share of {:g}", points.back().fallen_ratio), "", "end it with 1"};
  if (points.back().time_s > day_s)
    return Problem{fmt::format("the table ends at {}", hours_text(points.back().time_s)), "", "end it within 24 hours"};
  return std::nullopt;
}

constexpr const char* table_example = "write years and depths: 2 3.0in, 10 4.5in, 100 7.1in";

tl::expected<RainOfYears, Problem> row_of(const std::string& text, UnitSystem bare) {
  std::istringstream words{text};
  std::string years, depth, more;
  words >> years >> depth;
  while (words >> more) depth += more;
  const auto period = plain_number(years);
  if (depth.empty() || !period)
    return refusal(fmt::format("\"{}\" is no number of years with a depth", text), table_example);
  if (*period < 1 || *period > 10000)
    return refusal(fmt::format("{} years cannot be told of", years), "give 1 to 10000 years");
  const auto rain_m = parse_quantity(depth, Quantity::rain_depth, bare);
  if (!rain_m || *rain_m <= 0 || *rain_m > 3)
    return refusal(fmt::format("\"{}\" is no depth of rain", depth), "give a depth over nothing and under 3 m");
  return RainOfYears{*period, *rain_m};
}

std::optional<Problem> fault_of(const std::vector<RainOfYears>& rows) {
  if (rows.size() > most_points) return Problem{"the table has too many rows", "", "give at most 2000 of them"};
  for (std::size_t i = 1; i < rows.size(); ++i) {
    if (rows[i].years <= rows[i - 1].years || rows[i].rain_m <= rows[i - 1].rain_m)
      return Problem{
          fmt::format("the rain of {:g} years is not above that of {:g} years", rows[i].years, rows[i - 1].years), "",
          "give rows of rising years and rising depths"};
  }
  return std::nullopt;
}

/// The time in hours where that reads back as the same, else in seconds.
std::string time_text(double time_s) {
  const std::string hours = fmt::format("{}", time_s / hour_s);
  return time_of(hours) == time_s ? hours : fmt::format("{}s", time_s);
}

}  // namespace

double MassCurve::fallen_ratio(double time_s) const {
  if (time_s <= points.front().time_s) return 0;
  if (time_s >= points.back().time_s) return 1;
  const auto above = std::ranges::upper_bound(points, time_s, {}, &MassPoint::time_s);
  const MassPoint &a = *(above - 1), &b = *above;
  return std::lerp(a.fallen_ratio, b.fallen_ratio, (time_s - a.time_s) / (b.time_s - a.time_s));
}

tl::expected<MassCurve, Problem> parse_mass_curve(std::string_view text) {
  MassCurve curve;
  std::istringstream entries{std::string{text}};
  for (std::string entry; std::getline(entries, entry, ',');) {
    if (entry.find_first_not_of(" \t\n") == entry.npos && entries.eof() && curve.points.empty()) return curve;
    const auto point = point_of(entry);
    if (!point) return tl::unexpected{point.error()};
    curve.points.push_back(*point);
  }
  if (curve.points.empty()) return curve;
  if (auto fault = fault_of(curve.points)) return tl::unexpected{*fault};
  return curve;
}

std::string text_of(const MassCurve& curve) {
  std::string text;
  for (const MassPoint& point : curve.points)
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", time_text(point.time_s), point.fallen_ratio);
  return text;
}

tl::expected<RainTable, Problem> parse_rain_table(std::string_view text, UnitSystem bare) {
  RainTable table;
  std::istringstream entries{std::string{text}};
  for (std::string entry; std::getline(entries, entry, ',');) {
    if (entry.find_first_not_of(" \t\n") == entry.npos && entries.eof() && table.rows.empty()) return table;
    const auto row = row_of(entry, bare);
    if (!row) return tl::unexpected{row.error()};
    table.rows.push_back(*row);
  }
  if (auto fault = fault_of(table.rows)) return tl::unexpected{*fault};
  return table;
}

std::string text_of(const RainTable& table, UnitSystem units) {
  std::string text;
  for (const RainOfYears& row : table.rows)
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", row.years,
                        exact_text_of(row.rain_m, Quantity::rain_depth, units));
  return text;
}

}  // namespace yardwright
