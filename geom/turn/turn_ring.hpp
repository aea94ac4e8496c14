// The ring that a vehicle sweeps in one turn: straight in, an arc of the front axle's centre, straight out until
// the chain lies in line again. Metres. The nearest usually comes after the front axle has left the arc.
#pragma once

#include "geom/turn/driving.hpp"

namespace yardwright::turn {

struct TurnRing {
  double inside_m = 0;  ///< nearest that any body comes to the arc's centre, the way out included
  double outer_m = 0;   ///< farthest that the front corner reaches from it while the front axle is on the arc
  HitchAngle greatest_hitch;

  double width_m() const { return outer_m - inside_m; }
};

TurnRing turn_ring(const Vehicle& vehicle, double front_radius_m, Angle swept, double step_m = 0.1);

}  // namespace yardwright::turn
