// A buried pipe from its upper to its lower end, which takes the water of the catch basins, trench drains, downspouts and
// tile lines on it to its outlet: onto the ground, into a pit, a receiving ditch or another tile line.
#pragma once

#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

struct TileLine {
  static constexpr std::string_view key = "tile-line";
  static constexpr std::string_view label = "tile line";

  SitePath path;
  double diameter_m = 8 * 0.0254;
  double start_depth_m = 2.5 * foot_m;
  double end_depth_m = 3 * foot_m;
  double roughness_n = 0.011;
  double tailwater_m = 0.0;

  bool operator==(const TileLine&) const = default;
};

template <MaybeConst<TileLine> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"path", "path", "from its upper to its lower end"}, self.path);
  visit(Field{"diameter", "diameter", "inside", Quantity::small_length, 0.03, 3}, self.diameter_m);
  visit(Field{"start-depth", "invert at start", "below the ground there", Quantity::length, 0, 15}, self.start_depth_m);
  visit(Field{"end-depth", "invert at end", "below the ground there", Quantity::length, 0, 15}, self.end_depth_m);
  visit(Field{"roughness", "roughness n", "of Manning, 0.011 for smooth plastic", Quantity::ratio, 0.005, 0.2},
        self.roughness_n);
  visit(Field{"tailwater", "tailwater", "that always stands over the invert of its outlet; 0 lets it fall free",
              Quantity::length, 0, 10},
        self.tailwater_m);
}

}  // namespace yardwright
