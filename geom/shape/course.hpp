// A path as a vehicle can drive it: straight pieces joined by true circular arcs, where a polyline with fillets has
// chords. Stations in metres along it; site frame; positive curvature turns left.
#pragma once

#include <vector>

#include "geom/shape/point.hpp"

namespace yardwright {

struct CoursePiece {
  SitePoint start;
  SiteVector ahead;  ///< unit vector of the way it goes at its start
  double length_m = 0;
  double curvature_per_m = 0;  ///< 0 is straight
  bool operator==(const CoursePiece&) const = default;
};

/// Pieces in order, each starting where the last one ends. Where no arc fits a corner the way ahead jumps.
struct Course {
  std::vector<CoursePiece> pieces;
  bool operator==(const Course&) const = default;
};

/// A place on a course and the way it goes there, as a unit vector.
struct CoursePoint {
  SitePoint at;
  SiteVector ahead;
};

/// The legs of a path, its corners rounded by arcs of `corner_radius_m`, or of the largest radius that half of each
/// leg allows: the same curve as with_fillets(), without chords.
Course course_of(const SitePath& path, double corner_radius_m);

/// Straight, then an arc through `turn` (positive to the left), then straight, from the origin eastward.
Course single_turn(double lead_in_m, double radius_m, Angle turn, double lead_out_m);

double length(const Course& course);
CoursePoint point_on(const CoursePiece& piece, double from_start_m);
CoursePoint point_on(const Course& course, double station_m);

/// The tightest radius of the course; 0 where it has a corner without an arc, infinite where it is straight.
double least_radius_m(const Course& course);
/// Where the tightest arc, or the corner without one, begins.
double station_of_least_radius_m(const Course& course);

/// The course as a polyline whose arcs are chords of at most `step_m`.
SitePath as_path(const Course& course, double step_m);

}  // namespace yardwright
