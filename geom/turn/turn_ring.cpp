#include "geom/turn/turn_ring.hpp"

#include <algorithm>

#include "geom/turn/clearance.hpp"

namespace yardwright::turn {

TurnRing turn_ring(const Vehicle& vehicle, double front_radius_m, Angle swept, double step_m) {
  const double way_out_m = 3 * length_in_line_m(vehicle);  // a link angle is down to a twentieth and less
  const Driven driven = drive(vehicle, single_turn(0, front_radius_m, swept, way_out_m), step_m);
  const SitePoint centre{0, swept.as_degrees() < 0 ? -front_radius_m : front_radius_m};
  TurnRing ring{ring_about(driven, bodies_of(vehicle), centre).inside_m, 0, driven.greatest_hitch};
  if (vehicle.units.empty()) return ring;
  const VehicleUnit& front = vehicle.units.front();
  const double nose_m = front.wheelbase_m + front.front_overhang_m;
  const Driven on_arc = drive(vehicle, single_turn(0, front_radius_m, swept, 0), step_m);
  ring.outer_m = ring_about(on_arc, {{0, nose_m, nose_m, front.width_m}}, centre).outer_m;
  return ring;
}

}  // namespace yardwright::turn
