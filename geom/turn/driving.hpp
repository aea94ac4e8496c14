// Drives a chain of units along a course that the centre of its front axle follows, forward, all units in line at
// the start. Each axle rolls without slipping: its velocity lies along its unit. Site frame, metres. The headings
// are integrated by a fourth-order Runge-Kutta step with nodes at the ends of the course's pieces, so that the
// result does not depend on the step; docs/methods/turn.md.
#pragma once

#include <span>
#include <vector>

#include "geom/shape/course.hpp"
#include "geom/site/catalog/vehicle.hpp"

namespace yardwright::turn {

/// Where a unit stands: the centre of its axle (group) and the way it looks, as a unit vector.
struct UnitPose {
  SitePoint axle;
  SiteVector ahead;
};

/// The pose between two near poses of the same unit, along the smooth curve that its axle rolls on.
UnitPose between(const UnitPose& a, const UnitPose& b, double part);

/// The greatest angle between a unit and the one that it pulls.
struct HitchAngle {
  Angle angle;  ///< 0 or more
  double station_m = 0;
  std::size_t pulling = 0;  ///< the unit ahead of the hitch
};

struct Driven {
  std::size_t units = 0;
  std::vector<double> stations_m;  ///< of the front axle along the course
  std::vector<UnitPose> poses;     ///< unit by unit, station by station
  HitchAngle greatest_hitch;

  std::size_t stations() const { return stations_m.size(); }
  const UnitPose& pose(std::size_t station, std::size_t unit) const { return poses[station * units + unit]; }
};

/// Empty where the vehicle has no units or the course no length.
Driven drive(const Vehicle& vehicle, const Course& course, double step_m = 0.25);

}  // namespace yardwright::turn
