// The contours of the ground as it lies, only where the ground will lie otherwise: elsewhere they are those of the design
// surface, and two lines upon each other are read as one.
#pragma once

#include "geom/ground/contours.hpp"
#include "geom/ground/design_surface.hpp"

namespace yardwright {

inline constexpr double graded_m = 0.01;  ///< less than this was not meant to be moved

/// Each piece begins and ends at its first point off the graded ground, on the design surface's own contour.
std::vector<Contour> existing_contours_where_graded(const DesignSurface& surface, double interval_m);

}  // namespace yardwright
