// Measures along polylines: length, points by station, nearest points, rounded corners.
#pragma once

#include "geom/shape/point.hpp"

namespace yardwright {

double length(const SitePath& path);

/// The pose at a distance along the path, clamped to its ends; facing the way the path goes there.
Pose pose_at(const SitePath& path, double station_m);

/// The nearest point of a segment or path, and how far it is.
struct Nearest {
  SitePoint point;
  double distance_m = 0;
  double station_m = 0;  ///< along the segment or path
};
Nearest nearest_on_segment(SitePoint from, SitePoint to, SitePoint point);
Nearest nearest_on_path(const SitePath& path, SitePoint point);

/// The path with every corner rounded by an arc of `radius_m`, or of the largest radius that the legs of that
/// corner allow; arcs are chords of at most `step_m`.
SitePath with_fillets(const SitePath& path, double radius_m, double step_m);

}  // namespace yardwright
