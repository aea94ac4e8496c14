// The boxes of a vehicle that sweep over the ground as it drives: the body of each unit, and the axle groups on
// which its tyres stand. Metres along the unit from its axle, positive ahead.
#pragma once

#include <array>
#include <vector>

#include "geom/turn/driving.hpp"

namespace yardwright::turn {

struct Body {
  std::size_t unit = 0;
  double front_m = 0;  ///< of the unit's axle
  double rear_m = 0;   ///< of the unit's axle; behind it where negative
  double width_m = 0;
  bool operator==(const Body&) const = default;
};

/// Of every unit that has a width; a drawbar has none.
std::vector<Body> bodies_of(const Vehicle& vehicle);

/// The ground on which the tyres of each axle group stand, as wide as its unit.
std::vector<Body> tyres_of(const Vehicle& vehicle);

/// Rear right, rear left, front left, front right.
std::array<SitePoint, 4> corners(const Body& body, const UnitPose& pose);

double greatest_width_m(const Vehicle& vehicle);
double greatest_height_m(const Vehicle& vehicle);
double top_m(const RaisedBed& bed);

/// From its foremost to its rearmost point when it stands in line.
double length_in_line_m(const Vehicle& vehicle);

}  // namespace yardwright::turn
