// A dimension line placed on the plan.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct Dimension {
  static constexpr std::string_view key = "dimension";
  static constexpr std::string_view label = "dimension";

  SitePath path;

  bool operator==(const Dimension&) const = default;
};

template <MaybeConst<Dimension> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"path", "path", "its two ends"}, self.path);
}

}  // namespace yardwright
