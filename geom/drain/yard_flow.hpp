// The yard's surface as water meets it: the design surface with bins, dryers and buildings standing above it, so that
// water goes around them and their roofs shed beside them, with curbs and retaining walls, and with culverts and the inlets of
// tile lines as links. Legs, receiving, stands, tanks
// and scales stand open or low and do not turn water. Here a pipe is taken to carry all that comes to it; the storm
// (geom/drain/storm) rates them.
#pragma once

#include "geom/drain/flow.hpp"
#include "geom/ground/design_surface.hpp"
#include "geom/site/site.hpp"

namespace yardwright::drain {

/// Whether an item stands in the way of water.
bool turns_water(const Item& item);

/// The levels with everything that turns water standing on them, far higher than any water.
LevelGrid with_walls(const Site& site, const LevelGrid& levels);

/// The lowest cell at a pipe's end, however exactly it was drawn; `outside` off the grid.
Cell pipe_mouth(const LevelGrid& levels, SitePoint end);

/// Where a grate takes water in: the lowest cell at a basin, every cell along a trench.
std::vector<Cell> inlet_cells(const LevelGrid& levels, const SitePath& along);

std::vector<Cell> ditch_cells(const GridFrame& frame, const ReceivingDitch& ditch);

/// `before` is the flow of a yard that is much like this one, if there is any: only what differs is found anew.
Flow yard_flow(const Site& site, const DesignSurface& surface, const Flow& before = {});

}  // namespace yardwright::drain
