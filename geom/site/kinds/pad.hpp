// A graded plane at one level, tied into the existing ground by side slopes.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct Pad {
  static constexpr std::string_view key = "pad";
  static constexpr std::string_view label = "pad";

  SitePath outline;
  double level_m = 0.0;
  double side_slope_ratio = 3.0;

  bool operator==(const Pad&) const = default;
};

template <MaybeConst<Pad> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(ring_field("outline", "outline", "corners of its level top"), self.outline);
  visit(Field{"level", "level", "of its top, in the levels of the ground", Quantity::length, -500, 9000}, self.level_m);
  visit(Field{"side-slope", "side slope", "run for one of rise", Quantity::side_slope, 0.5, 20}, self.side_slope_ratio);
}

}  // namespace yardwright
