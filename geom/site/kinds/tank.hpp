// A pressure tank for LP gas or anhydrous ammonia.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

enum class TankContents : std::uint8_t { lp_gas, ammonia };
constexpr std::array<std::string_view, 2> names_of(TankContents) { return {"lp-gas", "ammonia"}; }

struct Tank {
  static constexpr std::string_view key = "tank";
  static constexpr std::string_view label = "tank";

  SitePoint at;
  Bearing facing;
  double length_m = 4.877;
  double diameter_m = 1.041;
  double water_capacity_m3 = 3.785411784;
  TankContents contents = TankContents::lp_gas;
  bool underground = false;

  bool operator==(const Tank&) const = default;
};

template <MaybeConst<Tank> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"at", "place", "centre, in the site frame"}, self.at);
  visit(Field{"facing", "facing", "the way its length lies, clockwise from north"}, self.facing);
  visit(Field{"length", "length", "along the facing", Quantity::length, 0.3, 40}, self.length_m);
  visit(Field{"diameter", "diameter", "of the shell", Quantity::length, 0.2, 6}, self.diameter_m);
  visit(Field{"capacity", "water capacity", "as stamped on its plate", Quantity::tank_volume, 0.001, 1000},
        self.water_capacity_m3);
  visit(Field{"contents", "contents", "LP gas or ammonia"}, self.contents);
  visit(Field{"underground", "underground", "buried or mounded"}, self.underground);
}

}  // namespace yardwright
