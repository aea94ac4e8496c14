// A hopper bin on a stand, over a dryer or a load-out drive. The underside height is the clear height under
// its outlet.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

enum class HoldingUse : std::uint8_t { wet_holding, load_out };
constexpr std::array<std::string_view, 2> names_of(HoldingUse) { return {"wet-holding", "load-out"}; }

struct OverheadHolding {
  static constexpr std::string_view key = "overhead-holding";
  static constexpr std::string_view label = "overhead bin";

  SitePoint at;
  Bearing facing;
  double diameter_m = 15 * foot_m;
  double wall_height_m = 16 * foot_m;
  double underside_height_m = 15 * foot_m;
  Angle hopper_angle = Angle::degrees(45);
  Angle roof_slope = Angle::degrees(30);
  double inlet_over_peak_m = 1 * foot_m;
  double stand_width_m = 16 * foot_m;
  HoldingUse use = HoldingUse::wet_holding;
  std::string grain = "corn";

  bool operator==(const OverheadHolding&) const = default;
};

template <MaybeConst<OverheadHolding> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"at", "place", "centre, in the site frame"}, self.at);
  visit(Field{"facing", "facing", "the way its length lies, clockwise from north"}, self.facing);
  visit(Field{"diameter", "diameter", "inside of the wall", Quantity::length, 1, 20}, self.diameter_m);
  visit(Field{"wall", "wall height", "of the round wall from hopper top to eave", Quantity::length, 0.5, 30},
        self.wall_height_m);
  visit(Field{"underside", "underside height", "of the hopper outlet above the ground at its centre", Quantity::length,
              0, 30},
        self.underside_height_m);
  visit(Field{"hopper", "hopper angle", "below level", Quantity::angle, 20, 75}, self.hopper_angle);
  visit(Field{"roof", "roof slope", "of the roof cone above level", Quantity::angle, 0, 60}, self.roof_slope);
  visit(Field{"inlet", "inlet over peak", "over the point of the roof cone", Quantity::length, 0, 5},
        self.inlet_over_peak_m);
  visit(Field{"stand", "stand width", "of the square stand on the plan", Quantity::length, 1, 20}, self.stand_width_m);
  visit(Field{"use", "use", "wet holding before the dryer, or load-out"}, self.use);
  visit(Field{"grain", "grain", "name of the grain in the grain catalogue"}, self.grain);
}

}  // namespace yardwright
