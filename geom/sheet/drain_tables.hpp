// The drainage page of a plan set: what the storm brings to each pit, each catchment's farthest water and
// ground, the pipes with their inverts, slopes and what they carry, the
// inlets, and the earth that the grading moves.
#pragma once

#include "geom/drain/drain.hpp"
#include "geom/sheet/sheet_table.hpp"

namespace yardwright {

/// Those tables that have rows, in that order.
std::vector<Table> drain_tables(const Site& site, const DesignSurface& surface, const drain::Answer& answer,
                                const Catalogs& catalogs);

}  // namespace yardwright
