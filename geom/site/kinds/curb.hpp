// A low edge along its line that turns water and that wheels can climb: a curb, a kerbed edge of paving, a row of blocks.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct Curb {
  static constexpr std::string_view key = "curb";
  static constexpr std::string_view label = "curb";

  SitePath path;
  double height_m = 0.5 * foot_m;

  bool operator==(const Curb&) const = default;
};

template <MaybeConst<Curb> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"path", "path", "its line"}, self.path);
  visit(Field{"height", "height", "over the ground beside it", Quantity::length, 0.01, 2}, self.height_m);
}

}  // namespace yardwright
