#include "geom/site/catalog/work.hpp"

#include <algorithm>
#include <cmath>

#include "geom/units/text.hpp"

namespace yardwright {

namespace {

constexpr auto length = Quantity::length;
constexpr auto pipe = Quantity::small_length;

/// In the order of Work.
constexpr std::array<WorkMeasure, work_count> measures{{
    {"bins, diameter x eave", Quantity::grain_volume, 2},
    {"overhead bins, diameter x wall", Quantity::grain_volume, 2},
    {"legs, by discharge height", length},
    {"dryers", Quantity::count},
    {"drive-through receiving", Quantity::count},
    {"open dumps", Quantity::count},
    {"spouts, in space", length, 1, pipe},
    {"tube augers", length},
    {"U-troughs", length},
    {"drag conveyors", length},
    {"belt conveyors", length},
    {"scales", Quantity::count},
    {"gates", Quantity::count},
    {"tanks", Quantity::tank_volume},
    {"farm buildings, floor", Quantity::area},
    {"control rooms, floor", Quantity::area},
    {"dwellings, floor", Quantity::area},
    {"bin foundations, concrete", Quantity::volume},
    {"slabs of machines, concrete", Quantity::volume},
    {"receiving floors, concrete", Quantity::volume},
    {"pits, concrete", Quantity::volume},
    {"tunnels, concrete", Quantity::volume},
    {"sump pumps", Quantity::count},
    {"gravel of drives and pads", Quantity::volume},
    {"paved drives", Quantity::area},
    {"curbs", length},
    {"retaining walls", length},
    {"cut, in place", Quantity::volume},
    {"fill, in place", Quantity::volume},
    {"fill that must be brought", Quantity::volume},
    {"fill left over", Quantity::volume},
    {"culvert pipe", length, 1, pipe},
    {"tile line pipe", length, 1, pipe},
    {"trench drains", length},
    {"catch basins", Quantity::count},
}};

constexpr std::size_t longest_exact = 10;  // more digits than this were not typed in the unit

std::string one_size(double size_m, Quantity quantity, UnitSystem units) {
  const std::string exact = exact_text_of(size_m, quantity, units);
  return exact.size() <= longest_exact ? exact : text_of(size_m, quantity, units);
}

}  // namespace

const WorkMeasure& measure_of(Work work) { return measures[static_cast<std::size_t>(work)]; }

bool is_earth(Work work) { return work >= Work::cut && work <= Work::earth_left_over; }

const Unit& trade_unit(Work work, UnitSystem units) {
  const Quantity quantity = measure_of(work).quantity;
  if (quantity == Quantity::volume) return *unit_typed(units == UnitSystem::us ? "yd3" : "m3", quantity);
  if (quantity == Quantity::area) return *unit_typed(units == UnitSystem::us ? "ft2" : "m2", quantity);
  return shown_unit(quantity, units);
}

std::string size_text(Work work, const std::vector<double>& size_m, UnitSystem units) {
  std::string text;
  for (const double one_m : size_m) text += (text.empty() ? "" : " x ") + one_size(one_m, measure_of(work).size, units);
  return text;
}

bool same_size(const std::vector<double>& a, const std::vector<double>& b) {
  constexpr double tenth_mm = 1e-4;
  return std::ranges::equal(a, b, [](double x, double y) { return std::abs(x - y) < tenth_mm; });
}

}  // namespace yardwright
