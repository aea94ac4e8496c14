// How much grain a round bin holds, how much of it a centre sump lets flow, and what a core of its heap gives.
// Volumes are of the space that grain takes, before any pack factor. Centre filled, funnel flow, all surfaces
// cones: the heap at the filling angle, what stays behind at the emptying angle.
// Method, sources and limits: docs/methods/pace.md.
#pragma once

#include "geom/site/catalog/grain.hpp"
#include "geom/site/kinds/bin.hpp"
#include "geom/site/kinds/overhead_holding.hpp"
#include "geom/units/grain_volume.hpp"

namespace yardwright::pace {

/// The room inside a bin that grain can take.
struct BinRoom {
  double radius_m = 0;
  double wall_depth_m = 0;  ///< from the floor (of a hopper: its upper rim) to the eave
  Angle roof;
  Angle hopper;              ///< below level; 0 is a flat floor
  double sump_radius_m = 0;  ///< grain over it always flows
};

BinRoom room_of(const Bin& bin);
BinRoom room_of(const OverheadHolding& bin);

/// How the grain lies once the centre sump gives no more.
enum class Remainder : std::uint8_t {
  none,    ///< a hopper as steep as the emptying angle, or nothing in the bin
  ring,    ///< from the sump up to the wall, the crater is as wide as the bin
  crater,  ///< too little depth: the crater ends inside the wall
};
constexpr std::array<std::string_view, 3> names_of(Remainder) { return {"none", "ring", "crater"}; }

struct BinVolume {
  GrainVolume level;  ///< to the eave, struck level, hopper included
  GrainVolume heap;  ///< what the heap adds; negative where a low roof keeps grain from filling to the eave at the wall
  GrainVolume total;
  GrainVolume roof_cone;  ///< what the cone under the roof could hold at most
  GrainVolume flows;      ///< by the centre sump, without a sweep
  GrainVolume stays;
  GrainVolume core;  ///< drawn until half of the peak is gone and the surface is a W: crater bottom at wall level
  Remainder remainder = Remainder::none;
  double crater_radius_m = 0;  ///< at the top surface; of a ring: the bin's
  bool heap_meets_roof = false;

  double stays_ratio() const;  ///< of the total; 0 of an empty bin
};

/// Filled through the peak to its full heap.
BinVolume heaped(const BinRoom& room, const Grain& grain);
/// Filled to a level surface at the eave, as a spreader leaves it.
BinVolume struck(const BinRoom& room, const Grain& grain);

}  // namespace yardwright::pace
