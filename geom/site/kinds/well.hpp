// A water well.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct Well {
  static constexpr std::string_view key = "well";
  static constexpr std::string_view label = "well";

  SitePoint at;

  bool operator==(const Well&) const = default;
};

template <MaybeConst<Well> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"at", "place", "centre, in the site frame"}, self.at);
}

}  // namespace yardwright
