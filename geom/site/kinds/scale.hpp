// A truck scale, flush with or above the drive.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct Scale {
  static constexpr std::string_view key = "scale";
  static constexpr std::string_view label = "scale";

  SitePoint at;
  Bearing facing;
  double length_m = 70 * foot_m;
  double width_m = 11 * foot_m;

  bool operator==(const Scale&) const = default;
};

template <MaybeConst<Scale> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"at", "place", "centre, in the site frame"}, self.at);
  visit(Field{"facing", "facing", "the way its length lies, clockwise from north"}, self.facing);
  visit(Field{"length", "length", "along the drive", Quantity::length, 3, 50}, self.length_m);
  visit(Field{"width", "width", "across the drive", Quantity::length, 2, 10}, self.width_m);
}

}  // namespace yardwright
