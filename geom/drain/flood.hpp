// The first half of flow_over: water let in from the edge and the sinks rises over the grid. Gives the filled levels,
// the order of flooding, the cell from which each was flooded, and the depressions met on the way.
#pragma once

#include "geom/drain/flow.hpp"

namespace yardwright::drain {

/// Steps to the eight neighbours of a cell, counted from east to the right; straight ones are even.
struct Neighbour {
  int column, row;
};
inline constexpr Neighbour neighbours[8] = {{1, 0}, {1, -1}, {0, -1}, {-1, -1}, {-1, 0}, {-1, 1}, {0, 1}, {1, 1}};

/// Calls `use(neighbour cell, direction)` for every neighbour within the grid.
template <class Use>
void for_each_neighbour(const GridFrame& frame, Cell cell, Use&& use) {
  const CellIndex at = frame.cell_at_offset(static_cast<std::size_t>(cell));
  for (int direction = 0; direction < 8; ++direction) {
    const CellIndex next{at.column + neighbours[direction].column, at.row + neighbours[direction].row};
    if (frame.contains(next)) use(static_cast<Cell>(frame.offset(next)), direction);
  }
}

/// Fills frame and level_m into filled_m, receiver (as flooded), order, depression and depressions.
void flood(Flow& flow, const FlowOptions& options);

}  // namespace yardwright::drain
