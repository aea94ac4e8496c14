// The plan about drainage: the ground as it lies where it will lie otherwise, the main ways of the water, ponds and
// catchments, and which way the ground falls. The window draws it over its plan, the sheets with their design contours.
#pragma once

#include "geom/ground/contours.hpp"
#include "geom/sheet/plan_parts.hpp"
#include "geom/sheet/water_ways.hpp"

namespace yardwright {

/// What of it is the same at every scale, for whoever draws it again and again.
struct DrainShape {
  std::vector<Contour> existing;  ///< where the ground will lie otherwise
  WaterWays ways;
};
DrainShape drain_shape(const drain::Answer& answer, const DesignSurface& surface, double interval_m);

/// `keep_off`: what the slope arrows do not lie on besides the water's own lines.
PlanParts drain_shape_parts(const DrainShape& shape, const drain::Answer& answer, const DesignSurface& surface,
                            const Site& site, const PlanStyle& style, std::vector<Obstacle> keep_off);

/// Contours of the design surface; those far apart say their level too where they are no index contours.
PlanParts design_contour_parts(const DesignSurface& surface, double interval_m, const PlanStyle& style);

extern const ContourLook existing_contour_look;
extern const ContourLook design_contour_look;

}  // namespace yardwright
