// The water that stands in hollows and in pits when the heavy part of a storm begins, from what ran off before.
#pragma once

#include "geom/drain/flow.hpp"
#include "geom/drain/storm/storm_ground.hpp"

namespace yardwright::drain::storm {

struct StandingWater {
  std::vector<float> depth_m;      ///< of each cell
  std::vector<double> in_pits_m3;  ///< of each pit of the ground
};

/// Each hollow worth showing is filled by the runoff of its own ground and what spills over from the next; `run_off_m` is
/// told for each kind of cover, and for roofs. What stands over the rim of a pit has run into it; a pump that works has lifted it.
StandingWater standing_water(const Flow& flow, const StormGround& ground, std::span<const double> run_off_m);

}  // namespace yardwright::drain::storm
