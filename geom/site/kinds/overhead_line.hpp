// An overhead electric line along its poles.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct OverheadLine {
  static constexpr std::string_view key = "overhead-line";
  static constexpr std::string_view label = "overhead line";

  SitePath path;
  double lowest_conductor_m = 18.5 * foot_m;
  double voltage_v = 7200.0;

  bool operator==(const OverheadLine&) const = default;
};

template <MaybeConst<OverheadLine> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"path", "path", "its line on the plan, pole to pole"}, self.path);
  visit(Field{"conductor", "lowest conductor", "height above the ground at its lowest sag", Quantity::length, 1, 60},
        self.lowest_conductor_m);
  visit(Field{"voltage", "voltage", "between conductors", Quantity::voltage, 0, 1200000}, self.voltage_v);
}

}  // namespace yardwright
