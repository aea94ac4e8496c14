#include "geom/sheet/storm_drawing.hpp"

#include <algorithm>
#include <cmath>

#include "geom/sheet/grid_picture.hpp"
#include "geom/sheet/marks.hpp"

namespace yardwright {

namespace {

constexpr double film_m = 0.005;  ///< less than this is wet ground
constexpr double deep_m = 0.5;    ///< as dark as it gets
constexpr double least_speed_m_per_s = 0.05;
constexpr double longest_at_m_per_s = 1.0;

/// The mean velocity of the wet cells of a square.
SiteVector velocity_of(const drain::storm::StormFrame& frame, const GridFrame& ground, CellIndex from, int side) {
  SiteVector sum{0, 0};
  int wet = 0;
  for (int row = from.row; row < std::min(from.row + side, ground.rows); ++row) {
    for (int column = from.column; column < std::min(from.column + side, ground.columns); ++column) {
      const std::size_t at = ground.offset({column, row});
      if (frame.depth_mm[at] < film_m * 1000) continue;
      sum = sum + SiteVector{frame.east_mm_per_s[at] / 1000.0, frame.north_mm_per_s[at] / 1000.0};
      ++wet;
    }
  }
  return wet == 0 ? sum : sum * (1.0 / wet);
}

void add_arrow(std::vector<Mark>& marks, SitePoint middle, SiteVector velocity, double room_m) {
  const double speed_m_per_s = std::hypot(velocity.x, velocity.y);
  if (speed_m_per_s < least_speed_m_per_s) return;
  const SiteVector along = velocity * (1 / speed_m_per_s);
  const double half_m = room_m * 0.4 * std::sqrt(std::min(1.0, speed_m_per_s / longest_at_m_per_s));
  const Stroke stroke{palette::water, 0.2, {}};
  marks.push_back(line({middle - along * half_m, middle + along * half_m}, stroke));
  marks.push_back(arrowhead(middle + along * half_m, along, 0.9, stroke));
}

}  // namespace

Colour tint_of_depth(double depth_m) {
  if (depth_m < film_m) return palette::none;
  Colour tint = palette::water;
  tint.alpha = static_cast<std::uint8_t>(10 + 210 * std::pow(std::min(1.0, depth_m / deep_m), 0.65));
  return tint;
}

Drawing storm_drawing(const drain::storm::StormFrame& frame, const GridFrame& ground, double arrow_every_m) {
  Drawing drawing;
  drawing.marks.push_back(
      grid_picture(ground, [&](std::size_t at) { return tint_of_depth(frame.depth_mm[at] / 1000.0); }));
  const int side = std::max(1, static_cast<int>(std::lround(arrow_every_m / ground.cell_m)));
  for (int row = 0; row < ground.rows; row += side) {
    for (int column = 0; column < ground.columns; column += side) {
      const double half_m = side * ground.cell_m / 2;
      const SitePoint middle =
          ground.south_west + SiteVector{column * ground.cell_m + half_m, row * ground.cell_m + half_m};
      add_arrow(drawing.marks, middle, velocity_of(frame, ground, {column, row}, side), side * ground.cell_m);
    }
  }
  return drawing;
}

Drawing deepest_water_drawing(const Grid<float>& deepest_m) {
  Drawing drawing;
  if (deepest_m.empty()) return drawing;
  drawing.marks.push_back(grid_picture(
      deepest_m.frame(), [&](std::size_t at) { return tint_of_depth(static_cast<double>(deepest_m.values()[at])); }));
  return drawing;
}

}  // namespace yardwright
