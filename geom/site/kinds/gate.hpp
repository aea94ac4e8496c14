// An opening in the lot edge or a fence, where trucks come in or go out.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct Gate {
  static constexpr std::string_view key = "gate";
  static constexpr std::string_view label = "gate";

  SitePoint at;
  Bearing facing;
  double width_m = 30 * foot_m;

  bool operator==(const Gate&) const = default;
};

template <MaybeConst<Gate> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"at", "place", "centre, in the site frame"}, self.at);
  visit(Field{"facing", "facing", "the way its length lies, clockwise from north"}, self.facing);
  visit(Field{"width", "clear width", "between its posts", Quantity::length, 1, 60}, self.width_m);
}

}  // namespace yardwright
