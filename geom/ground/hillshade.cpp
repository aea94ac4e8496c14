#include "geom/ground/hillshade.hpp"

#include <algorithm>
#include <cmath>

#include "geom/shape/point.hpp"

namespace yardwright {

namespace {

/// Rise over run to the east and to the north.
SiteVector slope_at(const LevelGrid& ground, CellIndex cell) {
  const GridFrame& frame = ground.frame();
  const int west = std::max(cell.column - 1, 0), east = std::min(cell.column + 1, frame.columns - 1);
  const int south = std::max(cell.row - 1, 0), north = std::min(cell.row + 1, frame.rows - 1);
  const auto level = [&](int column, int row) { return double(ground.at({column, row})); };
  const auto along_row = [&](int row) { return level(east, row) - level(west, row); };
  const auto along_column = [&](int column) { return level(column, north) - level(column, south); };
  const double run_x_m = 4 * std::max(east - west, 1) * frame.cell_m,
               run_y_m = 4 * std::max(north - south, 1) * frame.cell_m;
  return {(along_row(south) + 2 * along_row(cell.row) + along_row(north)) / run_x_m,
          (along_column(west) + 2 * along_column(cell.column) + along_column(east)) / run_y_m};
}

}  // namespace

Grid<float> hillshade(const LevelGrid& ground, const Sun& sun) {
  if (ground.empty()) return {};
  const SiteVector to_sun = direction(sun.from) * cos(sun.height);
  const double up = sin(sun.height);
  std::vector<float> shade;
  shade.reserve(ground.frame().cells());
  for (std::size_t i = 0; i < ground.frame().cells(); ++i) {
    // The normal of the ground is (-east slope, -north slope, 1); light is its cosine with the way to the sun.
    const SiteVector slope = slope_at(ground, ground.frame().cell_at_offset(i)) * sun.exaggeration_ratio;
    const double light = (up - dot(slope, to_sun)) / std::sqrt(1 + dot(slope, slope));
    shade.push_back(static_cast<float>(std::clamp(light, 0.0, 1.0)));
  }
  return {ground.frame(), std::move(shade)};
}

}  // namespace yardwright
