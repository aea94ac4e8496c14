// A vehicle on its way through the yard: its stops in order, and the path driven by the middle of its front
// axle.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "geom/site/field.hpp"

namespace yardwright {

struct Route {
  static constexpr std::string_view key = "route";
  static constexpr std::string_view label = "route";

  SitePath path;
  std::string vehicle = "wb-67";
  double corner_radius_m = 15.24;
  std::vector<ItemId> stops;

  bool operator==(const Route&) const = default;
};

template <MaybeConst<Route> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"path", "path", "corners of the path that the front axle follows"}, self.path);
  visit(Field{"vehicle", "vehicle", "name in the vehicle catalogue"}, self.vehicle);
  visit(Field{"corner-radius", "corner radius", "of the path at its corners", Quantity::length, 0, 200},
        self.corner_radius_m);
  visit(Field{"stops", "stops", "gate, scale, receiving and gate, in order"}, self.stops);
}

}  // namespace yardwright
