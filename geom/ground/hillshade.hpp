// Light and shade of the ground for the plan's picture, 0 (dark) to 1 (facing the sun), by the slope that Horn's
// 3 x 3 differences find at each cell; at the rim the outermost levels are repeated.
// Source: Horn, "Hill shading and the reflectance map", 1981 (from memory).
#pragma once

#include "geom/shape/grid.hpp"
#include "geom/units/angle.hpp"
#include "geom/units/bearing.hpp"

namespace yardwright {

struct Sun {
  Bearing from = Bearing::degrees(315);  ///< where the light comes from
  Angle height = Angle::degrees(45);     ///< above the horizon
  double exaggeration_ratio = 3;         ///< of heights, since farm land is nearly level
};

/// Empty for an empty grid.
Grid<float> hillshade(const LevelGrid& ground, const Sun& sun = {});

}  // namespace yardwright
