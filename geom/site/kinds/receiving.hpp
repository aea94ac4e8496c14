// Where trucks dump: a drive-through building with doors at both ends, or an open dump. Its pit lies across
// the drive at its centre.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "geom/site/field.hpp"
#include "geom/site/kinds/pit_body.hpp"

namespace yardwright {

enum class ReceivingKind : std::uint8_t { drive_through, open_dump };
constexpr std::array<std::string_view, 2> names_of(ReceivingKind) { return {"drive-through", "open-dump"}; }

struct Receiving {
  static constexpr std::string_view key = "receiving";
  static constexpr std::string_view label = "receiving";

  SitePoint at;
  Bearing facing;
  ReceivingKind type = ReceivingKind::drive_through;
  double length_m = 15.24;
  double width_m = 20 * foot_m;
  double height_m = 20 * foot_m;
  double door_width_m = 14 * foot_m;
  double door_height_m = 16 * foot_m;
  double clear_height_m = 18 * foot_m;
  double pit_grain_m3 = 500 * cubic_metres_per_bushel;
  double capacity_m3_per_s = 5000 * bushels_an_hour;
  PitBody pit = {.width_m = 10 * foot_m, .length_m = 12 * foot_m, .depth_m = 8 * foot_m};

  bool operator==(const Receiving&) const = default;
};

template <MaybeConst<Receiving> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"at", "place", "centre, in the site frame"}, self.at);
  visit(Field{"facing", "facing", "the way its length lies, clockwise from north"}, self.facing);
  visit(Field{"type", "type", "drive-through building, or open dump"}, self.type);
  visit(Field{"length", "length", "of the building along the drive", Quantity::length, 1, 100}, self.length_m);
  visit(Field{"width", "width", "of the building across the drive", Quantity::length, 1, 40}, self.width_m);
  visit(Field{"height", "height", "of its roof above the ground", Quantity::length, 0, 20}, self.height_m);
  visit(Field{"door-width", "door width", "clear", Quantity::length, 1, 20}, self.door_width_m);
  visit(Field{"door-height", "door height", "clear", Quantity::length, 1, 15}, self.door_height_m);
  visit(Field{"clear-height", "clear height", "inside over the pit, where a bed is raised", Quantity::length, 1, 20},
        self.clear_height_m);
  visit(Field{"pit-grain", "pit holds", "grain that its hopper holds", Quantity::grain_volume, 0, 500},
        self.pit_grain_m3);
  visit(Field{"capacity", "capacity", "of the conveyor that empties it", Quantity::grain_flow, 0, 1},
        self.capacity_m3_per_s);
  visit(Field{"pit", "pit", "the hole under its grate"}, self.pit);
}

}  // namespace yardwright
