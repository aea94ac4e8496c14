// Lines of equal level through the cell centres of a grid: marching squares with linear interpolation along the
// cell-to-cell edges, joined into polylines with the higher ground on their left. A saddle is parted by its bilinear middle
// level, as level_at() sees it. A point at exactly a contour's level counts as above it. docs/methods/ground.md
#pragma once

#include "geom/shape/grid.hpp"
#include "geom/units/quantity.hpp"

namespace yardwright {

struct Contour {
  double level_m = 0;
  bool index = false;   ///< every fifth, drawn heavier
  bool closed = false;  ///< a ring: its last point joins its first, which is not repeated
  SitePath points;
  bool operator==(const Contour&) const = default;
};

/// Lowest level first. Levels are whole multiples of the interval, which must be positive.
std::vector<Contour> contours(const LevelGrid& ground, double interval_m);

/// The interval from the usual 1-2-5 series, in the unit system's own length unit, that draws at most twenty
/// levels over a relief.
double sensible_interval_m(double relief_m, UnitSystem system);

/// The least of that series that is no less; 0.1 of the unit at least.
double least_interval_m(double no_less_m, UnitSystem system);

/// Highest less lowest level; 0 of an empty grid.
double relief_m(const LevelGrid& ground);

}  // namespace yardwright
