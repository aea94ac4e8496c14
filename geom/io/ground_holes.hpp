// Cells of an imported ground that have no level: found, and filled from their rims.
#pragma once

#include <string>
#include <vector>

#include "geom/shape/grid.hpp"

namespace yardwright {

/// Levels that no farm has are marks of missing data that the file does not name as such.
inline constexpr double least_level_m = -500, most_level_m = 9000;

struct Holes {
  std::size_t cells = 0;
  SitePoint low, high;  ///< the box around them, in the site frame
};

/// Makes levels outside the bounds above NaN, and counts every NaN.
Holes mark_holes(std::vector<double>& levels_m, const GridFrame& frame);

/// "1,204 of 160,000 cells have no level, between 12 and 80 m east and 30 and 44 m north of the site's origin".
std::string holes_words(const Holes& holes, const GridFrame& frame);

/// Inverse-distance from the cells around each hole; how many cells are still without level.
std::size_t fill_holes(std::vector<double>& levels_m, const GridFrame& frame);

}  // namespace yardwright
