#include "geom/drain/raster.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "geom/drain/neighbourhood.hpp"

namespace yardwright::drain {

namespace {

/// Where a level line crosses the rings, from west to east.
std::vector<double> crossings(const Polygon& area, double y) {
  std::vector<double> xs;
  const auto cross_ring = [&](const std::vector<SitePoint>& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const SitePoint a = ring[i], b = ring[(i + 1) % ring.size()];
      if ((a.y <= y) != (b.y <= y)) xs.push_back(a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x));
    }
  };
  cross_ring(area.outer);
  for (const auto& hole : area.holes) cross_ring(hole);
  std::ranges::sort(xs);
  return xs;
}

/// A corner of cells: column and row of the cell to its north-east.
using Corner = std::pair<int, int>;
using Borders = std::multimap<Corner, Corner>;  // each border runs with the marked cell on its left

/// The cells within the box around them.
struct LocalMask {
  int west = 0, south = 0, columns = 0, rows = 0;
  std::vector<std::uint8_t> marked;

  bool has(int column, int row) const {
    const int x = column - west, y = row - south;
    return x >= 0 && y >= 0 && x < columns && y < rows && marked[static_cast<std::size_t>(y * columns + x)] != 0;
  }
};

LocalMask mask_of(const GridFrame& frame, std::span<const Cell> cells) {
  LocalMask mask{frame.columns, frame.rows};
  int east = -1, north = -1;
  for (const Cell cell : cells) {
    const CellIndex at = frame.cell_at_offset(static_cast<std::size_t>(cell));
    mask.west = std::min(mask.west, at.column);
    mask.south = std::min(mask.south, at.row);
    east = std::max(east, at.column);
    north = std::max(north, at.row);
  }
  mask.columns = std::max(0, east - mask.west + 1);
  mask.rows = std::max(0, north - mask.south + 1);
  mask.marked.resize(static_cast<std::size_t>(mask.columns) * static_cast<std::size_t>(mask.rows));
  for (const Cell cell : cells) {
    const CellIndex at = frame.cell_at_offset(static_cast<std::size_t>(cell));
    mask.marked[static_cast<std::size_t>((at.row - mask.south) * mask.columns + at.column - mask.west)] = 1;
  }
  return mask;
}

Borders borders_of(const GridFrame& frame, std::span<const Cell> cells) {
  const LocalMask mask = mask_of(frame, cells);
  Borders borders;
  for (const Cell cell : cells) {
    const auto [column, row] = frame.cell_at_offset(static_cast<std::size_t>(cell));
    if (!mask.has(column, row - 1)) borders.insert({{column, row}, {column + 1, row}});
    if (!mask.has(column + 1, row)) borders.insert({{column + 1, row}, {column + 1, row + 1}});
    if (!mask.has(column, row + 1)) borders.insert({{column + 1, row + 1}, {column, row + 1}});
    if (!mask.has(column - 1, row)) borders.insert({{column, row + 1}, {column, row}});
  }
  return borders;
}

bool straight_on(Corner a, Corner b, Corner c) {
  return (b.first - a.first) * (c.second - b.second) == (b.second - a.second) * (c.first - b.first);
}

SitePath corners_of_ring(const GridFrame& frame, const std::vector<Corner>& ring) {
  SitePath path;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Corner before = ring[(i + ring.size() - 1) % ring.size()], after = ring[(i + 1) % ring.size()];
    if (straight_on(before, ring[i], after)) continue;
    path.push_back(frame.south_west + SiteVector{ring[i].first * frame.cell_m, ring[i].second * frame.cell_m});
  }
  return path;
}

}  // namespace

std::vector<Cell> cells_in(const GridFrame& frame, const Polygon& area) {
  std::vector<Cell> cells;
  if (area.outer.size() < 3) return cells;
  const Box box = box_of(area.outer);
  const auto index = [&](double from_edge_m) { return static_cast<int>(std::ceil(from_edge_m / frame.cell_m - 0.5)); };
  const int first = std::max(0, index(box.low.y - frame.south_west.y));
  const int end = std::min(frame.rows, index(box.high.y - frame.south_west.y));
  for (int row = first; row < end; ++row) {
    const auto xs = crossings(area, frame.centre({0, row}).y);
    for (std::size_t i = 0; i + 1 < xs.size(); i += 2) {
      const int from = std::max(0, index(xs[i] - frame.south_west.x));
      const int to = std::min(frame.columns, index(xs[i + 1] - frame.south_west.x));
      for (int column = from; column < to; ++column) cells.push_back(static_cast<Cell>(frame.offset({column, row})));
    }
  }
  return cells;
}

std::vector<Cell> cells_in(const GridFrame& frame, const Outline& area) { return cells_in(frame, as_polygon(area)); }

Cell cell_at(const GridFrame& frame, SitePoint point) {
  const CellIndex cell = frame.cell_of(point);
  return frame.contains(cell) ? static_cast<Cell>(frame.offset(cell)) : outside;
}

std::vector<Cell> with_neighbours(const GridFrame& frame, std::span<const Cell> cells) {
  std::vector<Cell> all{cells.begin(), cells.end()};
  for (const Cell cell : cells) for_each_neighbour(frame, cell, [&](Cell next, int) { all.push_back(next); });
  std::ranges::sort(all);
  all.erase(std::unique(all.begin(), all.end()), all.end());
  return all;
}

std::vector<SitePath> rings_around(const GridFrame& frame, std::span<const Cell> cells) {
  Borders borders = borders_of(frame, cells);
  std::vector<SitePath> rings;
  while (!borders.empty()) {
    std::vector<Corner> ring;
    for (auto border = borders.begin(); border != borders.end(); border = borders.find(ring.back())) {
      if (ring.empty()) ring.push_back(border->first);
      ring.push_back(border->second);
      borders.erase(border);
    }
    ring.pop_back();  // where it began
    rings.push_back(corners_of_ring(frame, ring));
  }
  return rings;
}

}  // namespace yardwright::drain
