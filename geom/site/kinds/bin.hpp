// A round steel grain bin on its foundation. The base is the design ground at its centre; levels add up from
// there: foundation, floor, wall to the eave, roof cone, inlet.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

#include "geom/site/field.hpp"

namespace yardwright {

enum class BinFloor : std::uint8_t { raised, flat_channels, hopper };
constexpr std::array<std::string_view, 3> names_of(BinFloor) { return {"raised", "flat-channels", "hopper"}; }

enum class BinUse : std::uint8_t { dry_store, wet_holding };
constexpr std::array<std::string_view, 2> names_of(BinUse) { return {"dry-store", "wet-holding"}; }

struct Bin {
  static constexpr std::string_view key = "bin";
  static constexpr std::string_view label = "bin";

  SitePoint at;
  double diameter_m = 36 * foot_m;
  double eave_height_m = 24 * foot_m;
  Angle roof_slope = Angle::degrees(30);
  double foundation_height_m = 1 * foot_m;
  BinFloor floor = BinFloor::raised;
  double floor_height_m = 1.25 * foot_m;
  Angle hopper_angle = Angle::degrees(45);
  BinUse use = BinUse::dry_store;
  std::string grain = "corn";
  double sump_radius_m = 1 * foot_m;
  double inlet_over_peak_m = 2 * foot_m;
  Bearing fan_side = Bearing::degrees(90);
  Bearing unload_side = Bearing::degrees(180);

  bool operator==(const Bin&) const = default;
};

template <MaybeConst<Bin> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"at", "place", "centre, in the site frame"}, self.at);
  visit(Field{"diameter", "diameter", "inside of the wall", Quantity::length, 1, 60}, self.diameter_m);
  visit(Field{"eave", "eave height", "from the foundation top to the eave", Quantity::length, 1, 60},
        self.eave_height_m);
  visit(Field{"roof", "roof slope", "of the roof cone above level", Quantity::angle, 0, 60}, self.roof_slope);
  visit(Field{"foundation", "foundation height", "top of the slab above the ground at the centre", Quantity::length, 0,
              10},
        self.foundation_height_m);
  visit(Field{"floor", "floor", "full perforated floor on legs, flat slab with channels, or hopper"}, self.floor);
  visit(Field{"floor-height", "floor height", "of a raised floor above the slab; it holds no grain", Quantity::length,
              0, 3},
        self.floor_height_m);
  visit(Field{"hopper", "hopper angle", "of a hopper floor below level", Quantity::angle, 0, 75}, self.hopper_angle);
  visit(Field{"use", "use", "dry store, or wet holding before the dryer"}, self.use);
  visit(Field{"grain", "grain", "name of the grain in the grain catalogue"}, self.grain);
  visit(Field{"sump", "sump radius", "of the centre sump; grain within it always flows", Quantity::length, 0, 5},
        self.sump_radius_m);
  visit(Field{"inlet", "inlet over peak", "inlet box and roof cap over the point of the roof cone", Quantity::length, 0,
              5},
        self.inlet_over_peak_m);
  visit(Field{"fan-side", "fan side", "the way its fan looks", Quantity::bearing}, self.fan_side);
  visit(Field{"unload-side", "unload side", "the way its unload tube leaves", Quantity::bearing}, self.unload_side);
}

}  // namespace yardwright
