// A narrow channel under a grate along its line, across a drive or before a door; its lower end lies on a tile line.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct TrenchDrain {
  static constexpr std::string_view key = "trench-drain";
  static constexpr std::string_view label = "trench drain";

  SitePath path;
  double width_m = 0.5 * foot_m;
  double open_ratio = 0.5;
  double clogged_ratio = 0.0;

  bool operator==(const TrenchDrain&) const = default;
};

template <MaybeConst<TrenchDrain> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"path", "path", "its middle line; one of its ends lies on a tile line"}, self.path);
  visit(Field{"width", "width", "of its grate", Quantity::length, 0.05, 2}, self.width_m);
  visit(Field{"open", "open share", "of the grate between its bars", Quantity::grade, 0.05, 1}, self.open_ratio);
  visit(Field{"clogged", "clogged share", "of the grate, by trash and chaff", Quantity::grade, 0, 1},
        self.clogged_ratio);
}

}  // namespace yardwright
