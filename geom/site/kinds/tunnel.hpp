// A passage under the ground between two pits, for a conveyor and for people; water takes it too, once it stands over
// the sill. Its path is its middle line on the plan.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct Tunnel {
  static constexpr std::string_view key = "tunnel";
  static constexpr std::string_view label = "tunnel";

  SitePath path;
  ItemId from;
  ItemId to;
  double sill_depth_m = 6 * foot_m;
  double width_m = 4 * foot_m;
  double height_m = 6 * foot_m;

  bool operator==(const Tunnel&) const = default;
};

template <MaybeConst<Tunnel> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"path", "path", "its middle line on the plan, from pit to pit"}, self.path);
  visit(Field{"from", "from", "the pit (or the item with the pit) at its start"}, self.from);
  visit(Field{"to", "to", "the pit (or the item with the pit) at its end"}, self.to);
  visit(Field{"sill-depth", "sill depth", "of the highest place of its floor, below the ground at its start",
              Quantity::length, 0, 15},
        self.sill_depth_m);
  visit(Field{"width", "width", "inside", Quantity::length, 0.2, 10}, self.width_m);
  visit(Field{"height", "height", "inside", Quantity::length, 0.2, 6}, self.height_m);
}

}  // namespace yardwright
