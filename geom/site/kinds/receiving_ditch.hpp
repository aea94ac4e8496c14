// A ditch, pond or stream that takes the water of the yard: it stands at its own level, whatever comes.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct ReceivingDitch {
  static constexpr std::string_view key = "receiving-ditch";
  static constexpr std::string_view label = "receiving ditch";

  SitePath path;
  double width_m = 6 * foot_m;
  double water_depth_m = 0.5 * foot_m;

  bool operator==(const ReceivingDitch&) const = default;
};

template <MaybeConst<ReceivingDitch> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"path", "path", "its middle line"}, self.path);
  visit(Field{"width", "width", "of its water", Quantity::length, 0.1, 100}, self.width_m);
  visit(Field{"water-depth", "water depth", "that stands in it over the design ground, in the storm", Quantity::length,
              0, 10},
        self.water_depth_m);
}

}  // namespace yardwright
