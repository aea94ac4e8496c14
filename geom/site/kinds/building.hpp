// A building as a box on the plan.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

enum class BuildingUse : std::uint8_t { farm_building, control_room, dwelling };
constexpr std::array<std::string_view, 3> names_of(BuildingUse) {
  return {"farm-building", "control-room", "dwelling"};
}

struct Building {
  static constexpr std::string_view key = "building";
  static constexpr std::string_view label = "building";

  SitePoint at;
  Bearing facing;
  double length_m = 40 * foot_m;
  double width_m = 30 * foot_m;
  double height_m = 16 * foot_m;
  BuildingUse use = BuildingUse::farm_building;

  bool operator==(const Building&) const = default;
};

template <MaybeConst<Building> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"at", "place", "centre, in the site frame"}, self.at);
  visit(Field{"facing", "facing", "the way its length lies, clockwise from north"}, self.facing);
  visit(Field{"length", "length", "along the facing", Quantity::length, 0.5, 300}, self.length_m);
  visit(Field{"width", "width", "across the facing", Quantity::length, 0.5, 300}, self.width_m);
  visit(Field{"height", "height", "above the ground at its centre", Quantity::length, 0.5, 60}, self.height_m);
  visit(Field{"use", "use", "farm building, control room or dwelling"}, self.use);
}

}  // namespace yardwright
