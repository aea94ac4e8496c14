// Which cells of a grid an area covers, by their centres; and the other way, the rings around a set of cells.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "geom/drain/flow.hpp"
#include "geom/shape/outline.hpp"

namespace yardwright::drain {

/// Cells whose centres lie in the area, rows from south to north; none where the area is smaller than a cell.
std::vector<Cell> cells_in(const GridFrame& frame, const Polygon& area);
std::vector<Cell> cells_in(const GridFrame& frame, const Outline& area);

/// The cell that holds a point, or `outside`.
Cell cell_at(const GridFrame& frame, SitePoint point);

/// The cells and their neighbours, each once, in order.
std::vector<Cell> with_neighbours(const GridFrame& frame, std::span<const Cell> cells);

/// Closed rings along the borders of the cells, for filling by the even-odd rule; the first corner is not repeated.
std::vector<SitePath> rings_around(const GridFrame& frame, std::span<const Cell> cells);

}  // namespace yardwright::drain
