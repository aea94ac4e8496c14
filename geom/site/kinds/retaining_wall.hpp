// A wall that holds earth: what is graded on one side of it ends there, so that the ground beyond keeps its level. Its top
// stands over the higher ground beside it, and turns water.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct RetainingWall {
  static constexpr std::string_view key = "retaining-wall";
  static constexpr std::string_view label = "retaining wall";

  SitePath path;
  double freeboard_m = 0.5 * foot_m;
  double thickness_m = 1 * foot_m;

  bool operator==(const RetainingWall&) const = default;
};

template <MaybeConst<RetainingWall> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"path", "path", "its middle line"}, self.path);
  visit(Field{"freeboard", "freeboard", "of its top over the higher ground beside it", Quantity::length, 0, 5},
        self.freeboard_m);
  visit(Field{"thickness", "thickness", "on the plan", Quantity::length, 0.05, 3}, self.thickness_m);
}

}  // namespace yardwright
