#include "geom/shape/grid.hpp"

#include <algorithm>

namespace yardwright {

double level_at(const LevelGrid& grid, SitePoint point) {
  const GridFrame& frame = grid.frame();
  const double across = std::clamp((point.x - frame.south_west.x) / frame.cell_m - 0.5, 0.0, frame.columns - 1.0);
  const double up = std::clamp((point.y - frame.south_west.y) / frame.cell_m - 0.5, 0.0, frame.rows - 1.0);
  const int west = std::min(static_cast<int>(across), std::max(frame.columns - 2, 0));
  const int south = std::min(static_cast<int>(up), std::max(frame.rows - 2, 0));
  const int east = std::min(west + 1, frame.columns - 1), north = std::min(south + 1, frame.rows - 1);
  const double fx = across - west, fy = up - south;
  const double low = grid.at({west, south}) * (1 - fx) + grid.at({east, south}) * fx;
  const double high = grid.at({west, north}) * (1 - fx) + grid.at({east, north}) * fx;
  return low * (1 - fy) + high * fy;
}

}  // namespace yardwright
