// On the drainage page of a plan set: the way of each catchment's farthest water by its segments, and the ground that makes its
// curve number, of the pits, then of culverts and inlets.
#pragma once

#include "geom/drain/drain.hpp"
#include "geom/drain/pipe_catchments.hpp"
#include "geom/sheet/sheet_table.hpp"

namespace yardwright {

Table travel_table(const Site& site, const drain::Answer& answer, const std::vector<drain::PipeCatchment>& pipes);
Table cover_table(const Site& site, const drain::Answer& answer, const std::vector<drain::PipeCatchment>& pipes);

}  // namespace yardwright
