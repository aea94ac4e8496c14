// A vehicle as a chain of units for driving on the plan. Unit 0 steers by its front axle; every further unit is
// pulled by the hitch of the one before. Distances along a unit are measured from its axle (group) centre:
// positive ahead. Source of each record in assets/vehicles.json.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geom/units/angle.hpp"

namespace yardwright {

struct VehicleUnit {
  std::string name;             ///< "tractor", "semitrailer", "drawbar"
  double wheelbase_m = 0;       ///< from its axle ahead to its front axle or to the hitch that pulls it
  double hitch_m = 0;           ///< of the hitch for the next unit, ahead of its axle; behind where negative
  double front_overhang_m = 0;  ///< of its body ahead of its front axle or kingpin
  double rear_overhang_m = 0;   ///< of its body behind its axle
  double width_m = 0;           ///< of its body; 0 for a drawbar
  double height_m = 0;
  bool operator==(const VehicleUnit&) const = default;
};

/// A box that is raised to dump: its top is hinge height + length sin(angle) + wall cos(angle).
struct RaisedBed {
  double hinge_height_m = 0;
  double length_m = 0;
  double wall_m = 0;
  Angle angle;
  bool operator==(const RaisedBed&) const = default;
};

struct Vehicle {
  std::string id;
  std::string name;
  std::vector<VehicleUnit> units;
  double least_front_radius_m = 0;  ///< of the path of the front axle's centre
  Angle greatest_hitch_angle = Angle::degrees(90);
  std::optional<RaisedBed> bed;
  std::string source;
  bool operator==(const Vehicle&) const = default;
};

}  // namespace yardwright
