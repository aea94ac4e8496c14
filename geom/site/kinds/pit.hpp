// A pit in the ground that is no boot and no dump: a conveyor pit, a sump, a manhole.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"
#include "geom/site/kinds/pit_body.hpp"

namespace yardwright {

struct Pit {
  static constexpr std::string_view key = "pit";
  static constexpr std::string_view label = "pit";

  SitePoint at;
  Bearing facing;
  PitBody body;

  bool operator==(const Pit&) const = default;
};

template <MaybeConst<Pit> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"at", "place", "centre, in the site frame"}, self.at);
  visit(Field{"facing", "facing", "the way its length lies, clockwise from north"}, self.facing);
  visit(Field{"body", "pit", "its hole, curb and pump"}, self.body);
}

}  // namespace yardwright
