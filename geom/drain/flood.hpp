// Water let in from the edge and the sinks rises over the grid: the level to which it must rise at each cell to leave.
#pragma once

#include "geom/drain/neighbourhood.hpp"

namespace yardwright::drain {

/// Fills level_m into filled_m, all of it.
void flood(Flow& flow, const Neighbourhood& ways);

}  // namespace yardwright::drain
