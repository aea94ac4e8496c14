// A bank of earth along its line, standing above the existing ground.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct Berm {
  static constexpr std::string_view key = "berm";
  static constexpr std::string_view label = "berm";

  SitePath path;
  double height_m = 2 * foot_m;
  double top_width_m = 4 * foot_m;
  double side_slope_ratio = 4.0;

  bool operator==(const Berm&) const = default;
};

template <MaybeConst<Berm> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"path", "path", "the middle of its top"}, self.path);
  visit(Field{"height", "height", "of its top above the existing ground", Quantity::length, 0.01, 10}, self.height_m);
  visit(Field{"top-width", "top width", "level part of its top", Quantity::length, 0, 30}, self.top_width_m);
  visit(Field{"side-slope", "side slope", "run for one of rise", Quantity::side_slope, 0.5, 20}, self.side_slope_ratio);
}

}  // namespace yardwright
