// The cells of a grid that a line runs through: no line of neighbours leads across them from one side to the other.
#pragma once

#include <algorithm>
#include <cmath>
#include <utility>

#include "geom/shape/grid.hpp"
#include "geom/shape/path.hpp"

namespace yardwright {

/// Whole cells of a stretch given in cells from the frame's edge, cut to the frame; none where last < first.
struct CellSpan {
  int first = 0, last = -1;
};

inline CellSpan cell_span(double low, double high, int count) {
  return {static_cast<int>(std::clamp(std::floor(low), 0.0, double(count))),
          static_cast<int>(std::clamp(std::floor(high), -1.0, count - 1.0))};
}

/// Calls `use(cell)` for every cell of the frame that the segment runs through, row by row.
template <class Use>
void cells_along(const GridFrame& frame, SitePoint from, SitePoint to, Use use) {
  const auto in_cells = [&](SitePoint p) { return (p - frame.south_west) * (1 / frame.cell_m); };
  SiteVector low = in_cells(from), high = in_cells(to);
  if (low.y > high.y) std::swap(low, high);
  const double lean = high.y > low.y ? (high.x - low.x) / (high.y - low.y) : 0.0;
  const CellSpan rows = cell_span(low.y, high.y, frame.rows);
  for (int row = rows.first; row <= rows.last; ++row) {
    const double enter = row <= low.y ? low.x : low.x + lean * (row - low.y);
    const double leave = row + 1 >= high.y ? high.x : low.x + lean * (row + 1 - low.y);
    const CellSpan columns = cell_span(std::min(enter, leave), std::max(enter, leave), frame.columns);
    for (int column = columns.first; column <= columns.last; ++column) use(CellIndex{column, row});
  }
}

/// Along all of a path; a cell at a corner may come twice.
template <class Use>
void cells_along(const GridFrame& frame, const SitePath& path, Use use) {
  for (std::size_t i = 1; i < path.size(); ++i) cells_along(frame, path[i - 1], path[i], use);
}

}  // namespace yardwright
