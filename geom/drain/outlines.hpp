// The outlines of water and of the ground that drains to it, for drawing; areas are counted by cells and do not follow
// from them. Closed rings, the widest first, for filling by the even-odd rule; the first point is not repeated.
// Page: docs/methods/drain.md.
#pragma once

#include <span>
#include <vector>

#include "geom/drain/flow.hpp"

namespace yardwright::drain {

/// Where water that stands at `water_level_m` on the cells meets the ground, between their centres. The cells around
/// them must not lie lower, as those around a depression do not lie lower than its spill.
std::vector<SitePath> shore_of(const Flow& flow, std::span<const Cell> cells, double water_level_m);

/// Along the borders of the cells with their steps smoothed away: nowhere farther than a cell and a half from them.
std::vector<SitePath> smooth_rings_around(const GridFrame& frame, std::span<const Cell> cells);

}  // namespace yardwright::drain
