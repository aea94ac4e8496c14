// Where a pointer is drawn to: corners and ends first, then the middle of things, then lines, then the grid.
#pragma once

#include "geom/site/site.hpp"

namespace yardwright::session {

enum class SnapTo : std::uint8_t { nothing, corner, centre, line, grid };

struct Snapped {
  SitePoint at;
  SnapTo to = SnapTo::nothing;
  bool operator==(const Snapped&) const = default;
};

struct SnapOptions {
  double radius_m = 1;      ///< how near is near
  double grid_m = 0;        ///< 0: no grid
  std::vector<ItemId> but;  ///< items that are being moved draw nothing
  bool to_lot = true;       ///< its corners and edges draw
};

Snapped snapped(const Site& site, SitePoint point, const SnapOptions& options);

/// A round step of the site's units that is at least `least_px` wide on the screen: 1, 2, 5, 10 ... ft, or tenths of a metre up.
double grid_step_m(UnitSystem units, double px_per_m, double least_px = 6);

/// The next round number at or above `value`: 1, 2 or 5 times a power of ten.
double round_up_to_step(double value);

}  // namespace yardwright::session
