#include "geom/drain/outlines.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

#include "geom/drain/raster.hpp"
#include "geom/ground/contours.hpp"

namespace yardwright::drain {

namespace {

/// Around the cells, with a border of one cell as far as the grid goes.
struct Window {
  int west, south, east, north;
};

Window window_around(const GridFrame& frame, std::span<const Cell> cells) {
  Window window{frame.columns, frame.rows, 0, 0};
  for (const Cell cell : cells) {
    const auto [column, row] = frame.cell_at_offset(static_cast<std::size_t>(cell));
    window.west = std::min(window.west, column - 1);
    window.south = std::min(window.south, row - 1);
    window.east = std::max(window.east, column + 1);
    window.north = std::max(window.north, row + 1);
  }
  return {std::max(window.west, 0), std::max(window.south, 0), std::min(window.east, frame.columns - 1),
          std::min(window.north, frame.rows - 1)};
}

/// How far the ground lies above the water, negative under it; 0 at least outside the cells.
LevelGrid above_water(const Flow& flow, std::span<const Cell> cells, double water_level_m) {
  const Window window = window_around(flow.frame, cells);
  const GridFrame frame{
      flow.frame.south_west + SiteVector{window.west * flow.frame.cell_m, window.south * flow.frame.cell_m},
      flow.frame.cell_m, window.east - window.west + 1, window.north - window.south + 1};
  const auto over_m = [&](Cell cell) { return flow.level_m[static_cast<std::size_t>(cell)] - water_level_m; };
  std::vector<float> values;
  for (int row = window.south; row <= window.north; ++row) {
    for (int column = window.west; column <= window.east; ++column) {
      const auto cell = static_cast<Cell>(flow.frame.offset({column, row}));
      values.push_back(static_cast<float>(std::max(0.0, over_m(cell))));
    }
  }
  for (const Cell cell : cells) {
    const auto [column, row] = flow.frame.cell_at_offset(static_cast<std::size_t>(cell));
    values[frame.offset({column - window.west, row - window.south})] = static_cast<float>(over_m(cell));
  }
  return {frame, std::move(values)};
}

void widest_first(std::vector<SitePath>& rings) {
  std::ranges::stable_sort(rings, std::greater{}, [](const SitePath& ring) { return area_m2({ring, {}}); });
}

/// The middle of every cell's border along a ring of corners.
SitePath middles_of_borders(const SitePath& ring, double cell_m) {
  SitePath middles;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const SitePoint from = ring[i], to = ring[(i + 1) % ring.size()];
    const int borders = static_cast<int>(std::lround(distance(from, to) / cell_m));
    for (int border = 0; border < borders; ++border) middles.push_back(between(from, to, (border + 0.5) / borders));
  }
  return middles;
}

/// Every point becomes the mean of those within `reach` along the ring.
SitePath averaged(const SitePath& ring, int reach) {
  const int count = static_cast<int>(ring.size());
  SitePath smooth;
  for (int i = 0; i < count; ++i) {
    SiteVector sum;
    for (int j = i - reach; j <= i + reach; ++j)
      sum = sum + (ring[static_cast<std::size_t>((j + count) % count)] - ring[static_cast<std::size_t>(i)]);
    smooth.push_back(ring[static_cast<std::size_t>(i)] + sum * (1.0 / (2 * reach + 1)));
  }
  return smooth;
}

}  // namespace

std::vector<SitePath> shore_of(const Flow& flow, std::span<const Cell> cells, double water_level_m) {
  if (cells.empty()) return {};
  const LevelGrid ground = above_water(flow, cells, water_level_m);
  const float deepest_m = std::ranges::min(ground.values());
  if (deepest_m >= 0) return {};
  std::vector<SitePath> rings;  // an interval beyond the depth leaves one contour, the water's level
  for (Contour& shore : contours(ground, 1.0 - 2.0 * static_cast<double>(deepest_m))) {
    if (shore.closed) rings.push_back(std::move(shore.points));
  }
  widest_first(rings);
  return rings;
}

std::vector<SitePath> smooth_rings_around(const GridFrame& frame, std::span<const Cell> cells) {
  constexpr int farthest_reach = 3;
  constexpr int least_borders_for_one = 8;  // a ring of few cells keeps its size
  std::vector<SitePath> rings;
  for (const SitePath& ring : rings_around(frame, cells)) {
    const SitePath middles = middles_of_borders(ring, frame.cell_m);
    const int reach = std::min(farthest_reach, static_cast<int>(middles.size()) / least_borders_for_one);
    rings.push_back(averaged(middles, reach));
  }
  widest_first(rings);
  return rings;
}

}  // namespace yardwright::drain
