#include "geom/turn/body.hpp"

#include <algorithm>

namespace yardwright::turn {

namespace {

/// Half the length of ground under a tandem group: axles 4 ft apart and half a tyre. Common practice, no source.
constexpr double half_tandem_m = 0.9;
constexpr double half_front_tyre_m = 0.5;

}  // namespace

std::vector<Body> bodies_of(const Vehicle& vehicle) {
  std::vector<Body> bodies;
  for (std::size_t i = 0; i < vehicle.units.size(); ++i) {
    const VehicleUnit& unit = vehicle.units[i];
    if (unit.width_m <= 0) continue;
    bodies.push_back({i, unit.wheelbase_m + unit.front_overhang_m, -unit.rear_overhang_m, unit.width_m});
  }
  return bodies;
}

std::vector<Body> tyres_of(const Vehicle& vehicle) {
  std::vector<Body> tyres;
  if (!vehicle.units.empty()) {
    const VehicleUnit& front = vehicle.units.front();
    tyres.push_back({0, front.wheelbase_m + half_front_tyre_m, front.wheelbase_m - half_front_tyre_m, front.width_m});
  }
  for (std::size_t i = 0; i < vehicle.units.size(); ++i) {
    const VehicleUnit& unit = vehicle.units[i];
    const bool steered_axle = unit.width_m <= 0 && i + 1 < vehicle.units.size();
    const double width_m = steered_axle ? vehicle.units[i + 1].width_m : unit.width_m;
    tyres.push_back({i, half_tandem_m, -half_tandem_m, width_m});
  }
  return tyres;
}

std::array<SitePoint, 4> corners(const Body& body, const UnitPose& pose) {
  const SitePoint front = pose.axle + pose.ahead * body.front_m, rear = pose.axle + pose.ahead * body.rear_m;
  const SiteVector half = left_of(pose.ahead) * (body.width_m / 2);
  return {rear - half, rear + half, front + half, front - half};
}

double greatest_width_m(const Vehicle& vehicle) {
  double most = 0;
  for (const VehicleUnit& unit : vehicle.units) most = std::max(most, unit.width_m);
  return most;
}

double greatest_height_m(const Vehicle& vehicle) {
  double most = 0;
  for (const VehicleUnit& unit : vehicle.units) most = std::max(most, unit.height_m);
  return most;
}

double top_m(const RaisedBed& bed) {
  return bed.hinge_height_m + bed.length_m * sin(bed.angle) + bed.wall_m * cos(bed.angle);
}

double length_in_line_m(const Vehicle& vehicle) {
  double axle_m = 0, foremost_m = 0, rearmost_m = 0;  // along the line, ahead of the front axle
  for (const VehicleUnit& unit : vehicle.units) {
    foremost_m = std::max(foremost_m, axle_m + unit.front_overhang_m);
    axle_m -= unit.wheelbase_m;
    rearmost_m = std::min(rearmost_m, axle_m - unit.rear_overhang_m);
    axle_m += unit.hitch_m;
  }
  return foremost_m - rearmost_m;
}

}  // namespace yardwright::turn
