// What a number measures, and the units in which people type and read it. Inside, every quantity is in its SI
// base unit (angles and bearings in degrees, durations in seconds); text is turned into it and back at the
// doors only: file, panel, command line, printed words.
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <string_view>

namespace yardwright {

enum class Quantity : std::uint8_t {
  ratio,         ///< no unit
  count,         ///< whole number
  length,        ///< m: plan distances, heights, levels
  small_length,  ///< m: pipe and spout diameters (in, mm)
  rain_depth,    ///< m: in, mm
  area,          ///< m2: acres, hectares, ft2
  volume,        ///< m3: water and earth
  grain_volume,  ///< m3: bushels
  grain_flow,    ///< m3/s: bushels an hour
  flow,          ///< m3/s: cfs, gpm
  speed,         ///< m/s
  angle,         ///< degrees; a slope may be typed 9:12
  bearing,       ///< degrees clockwise from north
  grade,         ///< ratio of rise to run; typed in percent
  duration,      ///< s
  voltage,       ///< V
  tank_volume,   ///< m3: water capacity in US gallons or litres
  mass,          ///< kg
  side_slope,    ///< run for one of rise; may be typed 4:1
  years,         ///< of a return period
};

enum class UnitSystem : std::uint8_t { us, metric };
constexpr std::array<std::string_view, 2> names_of(UnitSystem) { return {"us", "metric"}; }

struct Unit {
  Quantity quantity;
  std::string_view suffix;  ///< as typed: "ft"
  double factor;            ///< SI value = typed value * factor
  bool us;                  ///< the unit in which the US system shows this quantity
  bool metric;              ///< the same for the metric system
};

/// Every unit that may be typed for a quantity; the first is its SI base unit.
std::span<const Unit> units_of(Quantity quantity);

/// The unit in which a system shows a quantity.
const Unit& shown_unit(Quantity quantity, UnitSystem system);

}  // namespace yardwright
