#include "geom/drain/culvert_flow.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "geom/drain/channel.hpp"
#include "geom/site/field.hpp"

namespace yardwright::drain {

namespace {

constexpr double gravity_m_per_s2 = 9.81;
constexpr double full_from_ratio = 0.75;  // of the diameter: below it HDS-5 takes no barrel as full

/// K, M, c, Y of HDS-5, appendix A, and the loss of the entry ke.
struct InletFigures {
  double k, m, c, y, entry_loss;
};

InletFigures figures_of(CulvertInlet inlet) {
  switch (inlet) {
    case CulvertInlet::concrete_square: return {0.0098, 2.0, 0.0398, 0.67, 0.5};
    case CulvertInlet::concrete_groove: return {0.0018, 2.0, 0.0292, 0.74, 0.2};
    case CulvertInlet::concrete_projecting: return {0.0045, 2.0, 0.0317, 0.69, 0.2};
    case CulvertInlet::metal_headwall: return {0.0078, 2.0, 0.0379, 0.69, 0.5};
    case CulvertInlet::metal_mitred: return {0.0210, 1.33, 0.0463, 0.75, 0.7};
    case CulvertInlet::metal_projecting: break;
  }
  return {0.0340, 1.50, 0.0553, 0.54, 0.9};
}

double full_area_m2(const CulvertBarrel& barrel) {
  return std::numbers::pi * barrel.diameter_m * barrel.diameter_m / 4;
}

/// A falling search over a rising function: where it reaches a value, between 0 and `most`.
template <class Rising>
double where_reached(Rising rising, double value, double most) {
  double low = 0, high = most;
  for (int i = 0; i < 44; ++i) {
    const double middle = (low + high) / 2;
    (rising(middle) < value ? low : high) = middle;
  }
  return low;
}

struct Critical {
  double depth_m;
  double head_m;  ///< depth and velocity head
};

/// Of a round pipe: Q^2 T / (g A^3) = 1; a flow too great for a free surface counts as full.
Critical critical_of(double diameter_m, double flow_m3_per_s) {
  const auto section_at = [&](double depth_m) {
    const double angle = 2 * std::acos(1 - 2 * depth_m / diameter_m);
    const double area_m2 = diameter_m * diameter_m / 8 * (angle - std::sin(angle));
    return std::pair{area_m2, diameter_m * std::sin(angle / 2)};
  };
  const auto critical_flow = [&](double depth_m) {
    const auto [area_m2, top_m] = section_at(depth_m);
    return top_m > 0 ? area_m2 * std::sqrt(gravity_m_per_s2 * area_m2 / top_m) : 1e9;
  };
  const double depth_m = where_reached(critical_flow, flow_m3_per_s, diameter_m * 0.9999);
  const double area_m2 = section_at(std::max(depth_m, 1e-9)).first;
  const double speed_m_per_s = area_m2 > 0 ? flow_m3_per_s / area_m2 : 0;
  return {depth_m, depth_m + speed_m_per_s * speed_m_per_s / (2 * gravity_m_per_s2)};
}

/// The barrel's own friction, before it is full: uniform flow at the headwater's depth, down the slope of the water
/// between its ends, so that water standing at the end holds it back.
double shallow_m3_per_s(const CulvertBarrel& barrel, double start_level_m, double end_level_m) {
  if (barrel.length_m <= 0) return full_area_m2(barrel) * 1e3;  // no barrel: the inlet decides
  const double slope_ratio = (start_level_m - std::max(end_level_m, barrel.end_invert_m)) / barrel.length_m;
  const Pipe pipe{barrel.diameter_m, slope_ratio, barrel.roughness_n};
  const double depth_m = std::min(start_level_m - barrel.start_invert_m, full_from_ratio * barrel.diameter_m);
  return flow_at_depth(pipe, depth_m).flow_m3_per_s;
}

}  // namespace

double inlet_headwater_m(const CulvertBarrel& barrel, double flow_m3_per_s) {
  if (flow_m3_per_s <= 0) return 0;
  const InletFigures f = figures_of(barrel.inlet);
  const double d_ft = barrel.diameter_m / foot_m;
  const double q_cfs = flow_m3_per_s / (foot_m * foot_m * foot_m);
  const double x = q_cfs / (std::numbers::pi / 4 * d_ft * d_ft * std::sqrt(d_ft));
  const double slope_part = (barrel.inlet == CulvertInlet::metal_mitred ? 0.7 : -0.5) * barrel.slope_ratio();
  const double critical_ratio = critical_of(barrel.diameter_m, flow_m3_per_s).head_m / barrel.diameter_m;
  const auto open = [&](double at, double critical) { return critical + f.k * std::pow(at, f.m) + slope_part; };
  const auto drowned = [&](double at) { return f.c * at * at + f.y + slope_part; };
  if (x >= 4.0) return barrel.diameter_m * drowned(x);
  if (x <= 3.5) return barrel.diameter_m * open(x, critical_ratio);
  // Between the two forms a straight line, from the open one at 3.5 to the drowned one at 4.
  const double q_at_3_5 = flow_m3_per_s * 3.5 / x;
  const double from = open(3.5, critical_of(barrel.diameter_m, q_at_3_5).head_m / barrel.diameter_m);
  return barrel.diameter_m * std::lerp(from, drowned(4.0), (x - 3.5) / 0.5);
}

double full_barrel_loss_m(const CulvertBarrel& barrel, double flow_m3_per_s) {
  const double radius_m = barrel.diameter_m / 4;  // hydraulic
  const double speed_m_per_s = flow_m3_per_s / full_area_m2(barrel);
  // 29 n^2 L / R^1.33 of feet is 2 g n^2 L / R^(4/3) of metres: 19.6.
  const double friction =
      2 * gravity_m_per_s2 * barrel.roughness_n * barrel.roughness_n * barrel.length_m / std::pow(radius_m, 4.0 / 3.0);
  return (1 + figures_of(barrel.inlet).entry_loss + friction) * speed_m_per_s * speed_m_per_s / (2 * gravity_m_per_s2);
}

double culvert_m3_per_s(const CulvertBarrel& barrel, double start_level_m, double end_level_m) {
  const double headwater_m = start_level_m - barrel.start_invert_m;
  if (headwater_m <= 0 || start_level_m <= end_level_m || barrel.diameter_m <= 0) return 0;
  const double most = full_area_m2(barrel) * std::sqrt(2 * gravity_m_per_s2 * (headwater_m + barrel.diameter_m)) * 2;
  const auto asked_by_inlet = [&](double q) { return inlet_headwater_m(barrel, q); };
  const auto asked_by_barrel = [&](double q) {
    const double drop_m = (critical_of(barrel.diameter_m, q).depth_m + barrel.diameter_m) / 2;
    return std::max(end_level_m, barrel.end_invert_m + drop_m) + full_barrel_loss_m(barrel, q);
  };
  const double inlet = where_reached(asked_by_inlet, headwater_m, most);
  const bool full =
      headwater_m >= full_from_ratio * barrel.diameter_m || end_level_m >= barrel.end_invert_m + barrel.diameter_m;
  // The two forms do not meet; rising water never carries less than it did while the barrel was shallow.
  const double shallow = shallow_m3_per_s(barrel, start_level_m, end_level_m);
  const double through = full ? std::max(where_reached(asked_by_barrel, start_level_m, most), shallow) : shallow;
  return std::min(inlet, through);
}

}  // namespace yardwright::drain
