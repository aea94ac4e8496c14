#include "geom/units/quantity.hpp"

#include <algorithm>
#include <array>
#include <cassert>

#include "geom/units/grain_volume.hpp"

namespace yardwright {

namespace {

constexpr double ft = 0.3048;
constexpr double inch = 0.0254;
constexpr double us_gallon = 231 * inch * inch * inch;
constexpr double acre = 43560 * ft * ft;
constexpr double bushel = cubic_metres_per_bushel;
constexpr double hour = 3600;

// Grouped by quantity, the SI base unit first in each group.
constexpr std::array units{
    Unit{Quantity::ratio, "", 1, true, true},
    Unit{Quantity::count, "", 1, true, true},
    Unit{Quantity::length, "m", 1, false, true},
    Unit{Quantity::length, "ft", ft, true, false},
    Unit{Quantity::length, "in", inch, false, false},
    Unit{Quantity::length, "cm", 0.01, false, false},
    Unit{Quantity::length, "mm", 0.001, false, false},
    Unit{Quantity::length, "yd", 3 * ft, false, false},
    Unit{Quantity::length, "mi", 5280 * ft, false, false},
    Unit{Quantity::length, "km", 1000, false, false},
    Unit{Quantity::small_length, "m", 1, false, false},
    Unit{Quantity::small_length, "in", inch, true, false},
    Unit{Quantity::small_length, "mm", 0.001, false, true},
    Unit{Quantity::small_length, "cm", 0.01, false, false},
    Unit{Quantity::small_length, "ft", ft, false, false},
    Unit{Quantity::rain_depth, "m", 1, false, false},
    Unit{Quantity::rain_depth, "in", inch, true, false},
    Unit{Quantity::rain_depth, "mm", 0.001, false, true},
    Unit{Quantity::rain_depth, "cm", 0.01, false, false},
    Unit{Quantity::area, "m2", 1, false, false},
    Unit{Quantity::area, "ac", acre, true, false},
    Unit{Quantity::area, "ha", 10000, false, true},
    Unit{Quantity::area, "ft2", ft* ft, false, false},
    Unit{Quantity::area, "mi2", 640 * acre, false, false},
    Unit{Quantity::area, "km2", 1e6, false, false},
    Unit{Quantity::volume, "m3", 1, false, true},
    Unit{Quantity::volume, "ft3", ft* ft* ft, true, false},
    Unit{Quantity::volume, "yd3", 27 * ft* ft* ft, false, false},
    Unit{Quantity::volume, "cy", 27 * ft* ft* ft, false, false},
    Unit{Quantity::volume, "gal", us_gallon, false, false},
    Unit{Quantity::volume, "l", 0.001, false, false},
    Unit{Quantity::grain_volume, "m3", 1, false, true},
    Unit{Quantity::grain_volume, "bu", bushel, true, false},
    Unit{Quantity::grain_volume, "ft3", ft* ft* ft, false, false},
    Unit{Quantity::grain_flow, "m3/s", 1, false, false},
    Unit{Quantity::grain_flow, "bu/h", bushel / hour, true, false},
    Unit{Quantity::grain_flow, "m3/h", 1 / hour, false, true},
    Unit{Quantity::flow, "m3/s", 1, false, false},
    Unit{Quantity::flow, "cfs", ft* ft* ft, true, false},
    Unit{Quantity::flow, "gpm", us_gallon / 60, false, false},
    Unit{Quantity::flow, "l/s", 0.001, false, true},
    Unit{Quantity::flow, "m3/h", 1 / hour, false, false},
    Unit{Quantity::speed, "m/s", 1, false, true},
    Unit{Quantity::speed, "ft/s", ft, true, false},
    Unit{Quantity::speed, "ft/min", ft / 60, false, false},
    Unit{Quantity::angle, "deg", 1, true, true},
    Unit{Quantity::bearing, "deg", 1, true, true},
    Unit{Quantity::grade, "m/m", 1, false, false},
    Unit{Quantity::grade, "%", 0.01, true, true},
    Unit{Quantity::duration, "s", 1, false, false},
    Unit{Quantity::duration, "min", 60, true, true},
    Unit{Quantity::duration, "h", hour, false, false},
    Unit{Quantity::duration, "d", 24 * hour, false, false},
    Unit{Quantity::voltage, "V", 1, false, false},
    Unit{Quantity::voltage, "kV", 1000, true, true},
    Unit{Quantity::tank_volume, "m3", 1, false, false},
    Unit{Quantity::tank_volume, "gal", us_gallon, true, false},
    Unit{Quantity::tank_volume, "l", 0.001, false, true},
    Unit{Quantity::mass, "kg", 1, false, true},
    Unit{Quantity::mass, "lb", kilograms_per_pound, true, false},
    Unit{Quantity::mass, "t", 1000, false, false},
    Unit{Quantity::side_slope, ": 1", 1, true, true},
    Unit{Quantity::years, "years", 1, true, true},
};

}  // namespace

std::span<const Unit> units_of(Quantity quantity) {
  const auto is_of = [quantity](const Unit& unit) { return unit.quantity == quantity; };
  const auto first = std::ranges::find_if(units, is_of);
  const auto last = std::find_if_not(first, units.end(), is_of);
  assert(first != last);
  return {first, last};
}

const Unit& shown_unit(Quantity quantity, UnitSystem system) {
  const auto choices = units_of(quantity);
  const auto shown = std::ranges::find_if(
      choices, [system](const Unit& unit) { return system == UnitSystem::us ? unit.us : unit.metric; });
  assert(shown != choices.end());
  return *shown;
}

}  // namespace yardwright
