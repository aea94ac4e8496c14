// Off-tracking in closed form: what a link does behind a point on an arc or a straight, and the circle on which a
// whole chain settles. Lengths in metres; a link angle is the heading of the path less that of the link.
// Elementary geometry of the tractrix; docs/methods/turn.md.
#pragma once

#include <optional>
#include <vector>

#include "geom/site/catalog/vehicle.hpp"

namespace yardwright::turn {

/// Angle of a link of `wheelbase_m` once its front has gone through `swept` on an arc, having entered it in line.
/// Holds until the link would fold past half a turn (only on arcs tighter than the link).
Angle link_angle_on_arc(double radius_m, double wheelbase_m, Angle swept);

/// How far the rear of a link lies from the centre of the arc that its front is on.
double trailing_radius_m(double radius_m, double wheelbase_m, Angle link_angle);

/// Angle of a link whose front has gone straight on for a distance.
Angle link_angle_on_straight(Angle at_start, double wheelbase_m, double distance_m);

/// The circle on which a chain settles when its front axle keeps to a radius.
struct SteadyTurn {
  std::vector<double> axle_radius_m;  ///< of each unit's axle
  double off_tracking_m = 0;          ///< front radius less that of the last axle
  double inside_m = 0;                ///< nearest that any body comes to the centre
  double outer_m = 0;                 ///< farthest that any body reaches from the centre
};

/// Nothing where the chain has no steady state: the circle is too tight and the last units fold inward for ever.
std::optional<SteadyTurn> steady_state(const Vehicle& vehicle, double front_radius_m);

/// The front radius above which the chain has a steady state.
double least_steady_radius_m(const Vehicle& vehicle);

}  // namespace yardwright::turn
