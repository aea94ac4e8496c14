// A conveyor on the plan along its path, from one item to another. Heights are above the ground at its ends;
// negative is below.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

enum class ConveyorKind : std::uint8_t { tube_auger, u_trough, drag, belt };
constexpr std::array<std::string_view, 4> names_of(ConveyorKind) { return {"tube-auger", "u-trough", "drag", "belt"}; }

struct Conveyor {
  static constexpr std::string_view key = "conveyor";
  static constexpr std::string_view label = "conveyor";

  SitePath path;
  ItemId from;
  ItemId to;
  ConveyorKind type = ConveyorKind::drag;
  double width_m = 1 * foot_m;
  double start_height_m = 0.0;
  double end_height_m = 0.0;
  double capacity_m3_per_s = 3000 * bushels_an_hour;

  bool operator==(const Conveyor&) const = default;
};

template <MaybeConst<Conveyor> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"path", "path", "its line on the plan, from intake to discharge"}, self.path);
  visit(Field{"from", "from", "what it takes grain from"}, self.from);
  visit(Field{"to", "to", "what it brings grain to"}, self.to);
  visit(Field{"type", "type", "of the conveyor"}, self.type);
  visit(Field{"width", "width", "of its casing on the plan", Quantity::length, 0.05, 3}, self.width_m);
  visit(Field{"start-height", "height at start", "of its casing over the ground, below it where negative",
              Quantity::length, -15, 60},
        self.start_height_m);
  visit(Field{"end-height", "height at end", "of its casing over the ground, below it where negative", Quantity::length,
              -15, 60},
        self.end_height_m);
  visit(Field{"capacity", "capacity", "at its incline", Quantity::grain_flow, 0, 1}, self.capacity_m3_per_s);
}

}  // namespace yardwright
