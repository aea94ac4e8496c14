#include "geom/drain/channel.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace yardwright::drain {

namespace {

constexpr double gravity_m_per_s2 = 9.80665;
constexpr double depth_of_most_flow_ratio = 0.93818;  // of a round pipe with one n at every depth

struct Section {
  double area_m2 = 0;
  double wetted_m = 0;
  double top_m = 0;
};

Section section(const Pipe& pipe, double depth_m) {
  const double d = pipe.diameter_m;
  const double angle = 2 * std::acos(1 - 2 * std::clamp(depth_m / d, 0.0, 1.0));  // at the centre, of the wet arc
  return {d * d / 8 * (angle - std::sin(angle)), d * angle / 2, d * std::sin(angle / 2)};
}

Section section(const Channel& channel, double depth_m) {
  const double b = channel.bottom_width_m, z = channel.side_slope_ratio;
  return {(b + z * depth_m) * depth_m, b + 2 * depth_m * std::hypot(1, z), b + 2 * z * depth_m};
}

template <class Conduit>
UniformFlow uniform(const Conduit& conduit, double depth_m) {
  if (conduit.slope_ratio <= 0) return {FlowState::no_slope};
  const Section wet = section(conduit, depth_m);
  if (wet.area_m2 <= 0) return {FlowState::dry};
  UniformFlow flow{FlowState::steady};
  flow.depth_m = depth_m;
  flow.area_m2 = wet.area_m2;
  flow.speed_m_per_s =
      std::pow(wet.area_m2 / wet.wetted_m, 2.0 / 3) * std::sqrt(conduit.slope_ratio) / conduit.roughness_n;
  flow.flow_m3_per_s = flow.speed_m_per_s * wet.area_m2;
  // A full pipe has no free surface; sin(pi) leaves a trace of one.
  const bool free_surface = wet.top_m > 1e-9;
  if (free_surface) flow.froude_ratio = flow.speed_m_per_s / std::sqrt(gravity_m_per_s2 * wet.area_m2 / wet.top_m);
  return flow;
}

/// Where a rising function of depth reaches zero between two depths, by bisection to the last bit that matters.
template <class Rising>
double root(Rising rising, double low_m, double high_m) {
  for (int i = 0; i < 100 && high_m - low_m > 1e-12 * high_m; ++i) {
    const double middle_m = (low_m + high_m) / 2;
    (rising(middle_m) < 0 ? low_m : high_m) = middle_m;
  }
  return (low_m + high_m) / 2;
}

/// A depth at which a rising function is no longer negative.
template <class Rising>
double deep_enough_m(Rising rising) {
  double depth_m = 1;
  while (rising(depth_m) < 0) depth_m *= 2;
  return depth_m;
}

}  // namespace

UniformFlow flow_at_depth(const Pipe& pipe, double depth_m) {
  return uniform(pipe, std::min(depth_m, pipe.diameter_m));
}
UniformFlow flow_at_depth(const Channel& channel, double depth_m) { return uniform(channel, depth_m); }

UniformFlow normal_flow(const Pipe& pipe, double flow_m3_per_s) {
  if (pipe.slope_ratio <= 0) return {FlowState::no_slope};
  if (flow_m3_per_s <= 0) return {FlowState::dry};
  const double deepest_m = depth_of_most_flow_ratio * pipe.diameter_m;
  const auto missing = [&](double depth_m) { return uniform(pipe, depth_m).flow_m3_per_s - flow_m3_per_s; };
  if (missing(deepest_m) < 0) {
    UniformFlow full = uniform(pipe, pipe.diameter_m);
    full.state = FlowState::surcharged;
    return full;
  }
  return uniform(pipe, root(missing, 0, deepest_m));
}

UniformFlow normal_flow(const Channel& channel, double flow_m3_per_s) {
  if (channel.slope_ratio <= 0) return {FlowState::no_slope};
  if (flow_m3_per_s <= 0) return {FlowState::dry};
  const auto missing = [&](double depth_m) { return uniform(channel, depth_m).flow_m3_per_s - flow_m3_per_s; };
  return uniform(channel, root(missing, 0, deep_enough_m(missing)));
}

// Froude number 1: Q^2 T = g A^3.
double critical_depth_m(const Channel& channel, double flow_m3_per_s) {
  if (flow_m3_per_s <= 0) return 0;
  const auto missing = [&](double depth_m) {
    const Section wet = section(channel, depth_m);
    return gravity_m_per_s2 * std::pow(wet.area_m2, 3) - flow_m3_per_s * flow_m3_per_s * wet.top_m;
  };
  return root(missing, 0, deep_enough_m(missing));
}

}  // namespace yardwright::drain
