// Levels along a line at even spacings, and the gentlest way to grade it: stations in metres along the line, levels in
// metres, linear between samples. docs/methods/ground.md
#pragma once

#include <vector>

#include "geom/shape/grid.hpp"

namespace yardwright {

struct LevelLine {
  double spacing_m = 1;
  std::vector<double> levels_m;  ///< two or more

  double length_m() const { return spacing_m * (static_cast<double>(levels_m.size()) - 1); }
  double level_m(double station_m) const;
};

/// A grid's levels along a path, about one cell apart; the path must have a length.
LevelLine level_line(const LevelGrid& ground, const SitePath& path);

/// Nowhere steeper than the grade, halfway between the lowest such line that only fills and the highest that only cuts. It
/// meets the ground at both ends; where these lie too far apart for the grade, both give way by half of what is too much.
LevelLine gentle_line(LevelLine ground, double greatest_grade_ratio);

}  // namespace yardwright
