// A shallow channel along its line, cut below the existing ground; its bottom falls evenly between the depths
// given at its ends.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct Swale {
  static constexpr std::string_view key = "swale";
  static constexpr std::string_view label = "swale";

  SitePath path;
  double start_depth_m = 1 * foot_m;
  double end_depth_m = 1.5 * foot_m;
  double bottom_width_m = 4 * foot_m;
  double side_slope_ratio = 4.0;

  bool operator==(const Swale&) const = default;
};

template <MaybeConst<Swale> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"path", "path", "the middle of its bottom, in the direction of flow"}, self.path);
  visit(Field{"start-depth", "depth at start", "below the existing ground there", Quantity::length, 0, 10},
        self.start_depth_m);
  visit(Field{"end-depth", "depth at end", "below the existing ground there", Quantity::length, 0, 10},
        self.end_depth_m);
  visit(Field{"bottom-width", "bottom width", "level part of its bottom", Quantity::length, 0, 30},
        self.bottom_width_m);
  visit(Field{"side-slope", "side slope", "run for one of rise", Quantity::ratio, 0.5, 20}, self.side_slope_ratio);
}

}  // namespace yardwright
