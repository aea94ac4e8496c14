#include "geom/reach/reach_ring.hpp"

namespace yardwright::reach {

namespace {

constexpr double scan_step_m = 2.0;
constexpr double farthest_m = 200.0;
constexpr int halvings = 30;

}  // namespace

ReachRing reach_ring(ItemId leg_id, const Leg& leg, const Bin& bin, Angle least_slope, const DesignSurface& surface,
                     int bearings) {
  ReachRing found{leg_id, bin.diameter_m, bin.eave_height_m, {}};
  const double outlet_m = outlet_level_m(leg, surface);
  const double inlet_m = *inlet_height_m(bin);
  const double fall_ratio = tan(least_slope);
  for (int i = 0; i < bearings; ++i) {
    const SiteVector out = direction(Bearing::degrees(360.0 * i / bearings));
    const auto reached = [&](double far_m) {
      return outlet_m - surface.level_m(leg.at + out * far_m) - inlet_m >= far_m * fall_ratio;
    };
    if (!reached(0)) return {leg_id, bin.diameter_m, bin.eave_height_m, {}};
    double near_m = 0;
    while (near_m < farthest_m && reached(near_m + scan_step_m)) near_m += scan_step_m;
    double beyond_m = near_m + scan_step_m;
    for (int half = 0; half < halvings; ++half) {
      const double middle_m = (near_m + beyond_m) / 2;
      (reached(middle_m) ? near_m : beyond_m) = middle_m;
    }
    found.ring.push_back(leg.at + out * near_m);
  }
  return found;
}

}  // namespace yardwright::reach
