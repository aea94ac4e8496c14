// The ground whose water comes to each culvert, catch basin and trench drain. Asked for sheets and on the command line; what
// Drain judges does not want it, so that no drag pays for it. Page: docs/methods/drain.md
#pragma once

#include "geom/drain/catchment_water.hpp"
#include "geom/ground/design_surface.hpp"
#include "geom/site/catalog/catalogs.hpp"

namespace yardwright::drain {

struct PipeCatchment {
  ItemId item;
  CatchmentWater water;
};

/// In the order of the items. Those that carry nothing are left out, and all where the storm's cover is not known.
std::vector<PipeCatchment> pipe_catchments(const Site& site, const DesignSurface& surface, const Catalogs& catalogs,
                                           const Flow& flow);

}  // namespace yardwright::drain
