// The water that stands in hollows when the heavy part of a storm begins, from what ran off before.
#pragma once

#include "geom/drain/flow.hpp"
#include "geom/drain/storm/storm_ground.hpp"

namespace yardwright::drain::storm {

/// Depths by cell, in metres: each hollow worth showing filled by the runoff of its own ground and what spills over from
/// the next. `run_off_m` is told for each kind of cover.
std::vector<float> standing_water_m(const Flow& flow, const StormGround& ground, std::span<const double> run_off_m);

}  // namespace yardwright::drain::storm
