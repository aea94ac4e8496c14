// Where each cell sends its water: D8 on the filled surface, the steepest of eight, diagonals divided by the square root
// of 2, the first of equals counted from east to the right. Where nothing falls, on flats and ponds, to the first
// neighbour, the straight ones before the diagonal, or pipe from which a step less is left to a place where it does.
#pragma once

#include "geom/drain/neighbourhood.hpp"

namespace yardwright::drain {

/// Of all cells, the steps on the level with them.
void find_directions(Flow& flow, const Neighbourhood& ways);

/// Of one cell, where the steps around it are known.
Cell receiver_of(const Flow& flow, const Neighbourhood& ways, Cell cell);

}  // namespace yardwright::drain
