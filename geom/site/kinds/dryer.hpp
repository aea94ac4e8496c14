// A grain dryer as a box on the plan, with the rates on its plate.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

enum class DryerOperation : std::uint8_t { continuous, batch };
constexpr std::array<std::string_view, 2> names_of(DryerOperation) { return {"continuous", "batch"}; }

enum class DryerFuel : std::uint8_t { lp_gas, natural_gas, other };
constexpr std::array<std::string_view, 3> names_of(DryerFuel) { return {"lp-gas", "natural-gas", "other"}; }

struct Dryer {
  static constexpr std::string_view key = "dryer";
  static constexpr std::string_view label = "dryer";

  SitePoint at;
  Bearing facing;
  double length_m = 30 * foot_m;
  double width_m = 10 * foot_m;
  double height_m = 20 * foot_m;
  double inlet_height_m = 20 * foot_m;
  DryerOperation operation = DryerOperation::continuous;
  double rate_5_points_m3_per_s = 0.0;
  double rate_10_points_m3_per_s = 0.0;
  double batch_m3 = 0.0;
  double batch_time_s = 0.0;
  DryerFuel fuel = DryerFuel::lp_gas;

  bool operator==(const Dryer&) const = default;
};

template <MaybeConst<Dryer> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"at", "place", "centre, in the site frame"}, self.at);
  visit(Field{"facing", "facing", "the way its length lies, clockwise from north"}, self.facing);
  visit(Field{"length", "length", "along the facing", Quantity::length, 1, 60}, self.length_m);
  visit(Field{"width", "width", "across the facing", Quantity::length, 1, 20}, self.width_m);
  visit(Field{"height", "height", "above the ground at its centre", Quantity::length, 1, 40}, self.height_m);
  visit(
      Field{"inlet", "inlet height", "where the spout enters, above the ground at its centre", Quantity::length, 0, 40},
      self.inlet_height_m);
  visit(Field{"operation", "operation", "continuous flow or batch"}, self.operation);
  visit(Field{"rate-5", "rate at 5 points", "wet grain taken from 20 to 15 percent", Quantity::grain_flow, 0, 1},
        self.rate_5_points_m3_per_s);
  visit(Field{"rate-10", "rate at 10 points", "wet grain taken from 25 to 15 percent", Quantity::grain_flow, 0, 1},
        self.rate_10_points_m3_per_s);
  visit(Field{"batch", "batch", "grain that a batch dryer holds", Quantity::grain_volume, 0, 1000}, self.batch_m3);
  visit(Field{"batch-time", "batch time", "fill, dry, cool and unload", Quantity::duration, 0, 172800},
        self.batch_time_s);
  visit(Field{"fuel", "fuel", "what it burns"}, self.fuel);
}

}  // namespace yardwright
