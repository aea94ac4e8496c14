// A grate in the ground over a chamber, which lets water into the tile line that runs under it.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct CatchBasin {
  static constexpr std::string_view key = "catch-basin";
  static constexpr std::string_view label = "catch basin";

  SitePoint at;
  Bearing facing;
  double length_m = 2 * foot_m;
  double width_m = 2 * foot_m;
  double open_ratio = 0.5;
  double clogged_ratio = 0.0;

  bool operator==(const CatchBasin&) const = default;
};

template <MaybeConst<CatchBasin> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"at", "place", "centre, in the site frame"}, self.at);
  visit(Field{"facing", "facing", "the way its length lies, clockwise from north"}, self.facing);
  visit(Field{"length", "length", "of its grate, along the facing", Quantity::length, 0.1, 5}, self.length_m);
  visit(Field{"width", "width", "of its grate, across the facing", Quantity::length, 0.1, 5}, self.width_m);
  visit(Field{"open", "open share", "of the grate between its bars", Quantity::grade, 0.05, 1}, self.open_ratio);
  visit(Field{"clogged", "clogged share", "of the grate, by trash and chaff", Quantity::grade, 0, 1},
        self.clogged_ratio);
}

}  // namespace yardwright
