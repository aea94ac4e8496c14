// What a yard is built of, as it is counted and priced: each work with the quantity that measures it and the sizes that
// tell one from another. Names are those of the price book. docs/methods/grow.md
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "geom/units/quantity.hpp"

namespace yardwright {

enum class Work : std::uint8_t {
  bin,
  overhead_bin,
  leg,
  dryer,
  drive_through,
  open_dump,
  spout,
  tube_auger,
  u_trough,
  drag,
  belt,
  scale,
  gate,
  tank,
  farm_building,
  control_room,
  dwelling,
  bin_foundation,
  machine_slab,
  receiving_floor,
  pit,
  tunnel,
  pump,
  gravel,
  paving,
  curb,
  retaining_wall,
  cut,
  fill,
  earth_brought,
  earth_left_over,
  culvert,
  tile_line,
  trench_drain,
  catch_basin,
};
constexpr std::array<std::string_view, 35> names_of(Work) {
  return {"bin",
          "overhead-bin",
          "leg",
          "dryer",
          "drive-through",
          "open-dump",
          "spout",
          "tube-auger",
          "u-trough",
          "drag",
          "belt",
          "scale",
          "gate",
          "tank",
          "farm-building",
          "control-room",
          "dwelling",
          "bin-foundation",
          "machine-slab",
          "receiving-floor",
          "pit",
          "tunnel",
          "pump",
          "gravel",
          "paving",
          "curb",
          "retaining-wall",
          "cut",
          "fill",
          "earth-brought",
          "earth-left-over",
          "culvert",
          "tile-line",
          "trench-drain",
          "catch-basin"};
}
inline constexpr std::size_t work_count = names_of(Work{}).size();

/// What tells one of the same work from another, and is measured.
struct WorkMeasure {
  std::string_view words;  ///< "foundations of bins, concrete"
  Quantity quantity;       ///< of its amount; count where it is only counted
  int sizes = 0;           ///< how many tell it apart: a bin's diameter and eave height
  Quantity size = Quantity::length;
};
const WorkMeasure& measure_of(Work work);

/// Earth is moved by the yard as a whole, from one surface to another.
bool is_earth(Work work);

/// The unit in which builders speak of it: yd3 and ft2 in the US.
const Unit& trade_unit(Work work, UnitSystem units);

/// "36 ft x 24 ft"; empty without sizes.
std::string size_text(Work work, const std::vector<double>& size_m, UnitSystem units);

/// The same on every rule: to a tenth of a millimetre.
bool same_size(const std::vector<double>& a, const std::vector<double>& b);

}  // namespace yardwright
