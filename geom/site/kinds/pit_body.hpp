// The hole of a pit in the ground: its plan, its depth, the curb around its rim and the pump that keeps it
// dry. Width and length are inside; depth is from the ground at its centre down to the floor.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct PitBody {
  double width_m = 6 * foot_m;
  double length_m = 8 * foot_m;
  double depth_m = 8 * foot_m;
  double rim_height_m = 0.0;
  double pump_m3_per_s = 0.0;
  double pump_on_m = 0.5 * foot_m;
  double pump_off_m = 0.2 * foot_m;
  double pump_shutoff_m = 0.0;
  double pump_discharge_m = 0.0;

  bool operator==(const PitBody&) const = default;
};

template <MaybeConst<PitBody> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"width", "pit width", "inside, across the facing", Quantity::length, 0, 20}, self.width_m);
  visit(Field{"length", "pit length", "inside, along the facing", Quantity::length, 0, 30}, self.length_m);
  visit(Field{"depth", "pit depth", "ground at its centre down to its floor; 0 is no pit", Quantity::length, 0, 15},
        self.depth_m);
  visit(Field{"rim", "rim height", "curb above the ground at its centre", Quantity::length, 0, 3}, self.rim_height_m);
  visit(Field{"pump", "pump rate", "what its sump pump lifts; 0 is no pump", Quantity::flow, 0, 1}, self.pump_m3_per_s);
  visit(
      Field{"pump-on", "pump starts at", "water over the floor at which its float starts it", Quantity::length, 0, 15},
      self.pump_on_m);
  visit(Field{"pump-off", "pump stops at", "water over the floor at which its float stops it", Quantity::length, 0, 15},
        self.pump_off_m);
  visit(Field{"pump-shutoff", "pump shut-off head",
              "at which its pump lifts nothing; less rate the higher it lifts. 0: the same rate at any lift",
              Quantity::length, 0, 60},
        self.pump_shutoff_m);
  visit(Field{"pump-discharge", "pump discharge height", "of the end of its pipe over the ground at the pit's centre",
              Quantity::length, -5, 40},
        self.pump_discharge_m);
}

}  // namespace yardwright
