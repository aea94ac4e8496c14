// The schedules of a plan set: spouts with their levels and slopes, bins with their sizes, and every item with its
// size and place, so that a builder can set it out.
#pragma once

#include "geom/ground/design_surface.hpp"
#include "geom/sheet/sheet_table.hpp"
#include "geom/site/catalog/catalogs.hpp"

namespace yardwright {

/// Those tables that have rows, in that order.
std::vector<Table> schedule_tables(const Site& site, const DesignSurface& surface, const Catalogs& catalogs);

}  // namespace yardwright
