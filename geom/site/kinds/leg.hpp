// A bucket elevator with its distributor on top and its boot in a pit at its foot. The discharge height is
// above the design ground at the leg.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"
#include "geom/site/kinds/pit_body.hpp"

namespace yardwright {

struct Leg {
  static constexpr std::string_view key = "leg";
  static constexpr std::string_view label = "leg";

  SitePoint at;
  Bearing facing;
  double discharge_height_m = 80 * foot_m;
  double distributor_drop_m = 6 * foot_m;
  int outlets = 8;
  Bearing first_outlet;
  double capacity_m3_per_s = 3000 * bushels_an_hour;
  double tower_width_m = 4 * foot_m;
  PitBody boot;

  bool operator==(const Leg&) const = default;
};

template <MaybeConst<Leg> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"at", "place", "centre, in the site frame"}, self.at);
  visit(Field{"facing", "facing", "the way its length lies, clockwise from north"}, self.facing);
  visit(Field{"discharge", "discharge height", "of the head discharge above the ground at the leg", Quantity::length, 3,
              100},
        self.discharge_height_m);
  visit(Field{"distributor-drop", "distributor drop", "from the discharge down to the spout outlets", Quantity::length,
              0, 10},
        self.distributor_drop_m);
  visit(Field{"outlets", "outlets", "of the distributor", Quantity::count, 1, 24}, self.outlets);
  visit(Field{"first-outlet", "first outlet", "the way the first outlet looks", Quantity::bearing}, self.first_outlet);
  visit(Field{"capacity", "capacity", "of the buckets at full feed", Quantity::grain_flow, 0, 1},
        self.capacity_m3_per_s);
  visit(Field{"tower", "tower width", "of the square casing and tower on the plan", Quantity::length, 0.2, 10},
        self.tower_width_m);
  visit(Field{"boot-pit", "boot pit", "the pit in which its boot stands"}, self.boot);
}

}  // namespace yardwright
