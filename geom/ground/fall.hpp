// How the ground falls at a place: the plane of least squares through the cells around it. Averaged over a few cells it is
// what water and a level feel, and not the steps of the grid. docs/methods/ground.md
#pragma once

#include <optional>

#include "geom/shape/grid.hpp"

namespace yardwright {

struct Fall {
  SiteVector downhill;     ///< unit vector; zero where it is level
  double grade_ratio = 0;  ///< along it
  double rough_m = 0;      ///< root mean square of what the cells lie off the plane: great over a bank or in a ditch
};

/// Of the cells whose centres lie within the radius. Nothing where that reaches over the edge of the grid, or holds too few
/// cells to tell.
std::optional<Fall> fall_at(const LevelGrid& levels, SitePoint at, double radius_m);

/// The mean over the whole grid of how steep it is between neighbours; 0 of an empty grid.
double mean_grade(const LevelGrid& levels);

}  // namespace yardwright
