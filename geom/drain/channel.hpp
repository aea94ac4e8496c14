// Uniform flow by Manning's formula Q = A R^(2/3) S^(1/2) / n in round pipes and in trapezoid or V channels. SI;
// slopes are ratios. A pipe carries most at 0.938 of its depth; where two depths carry a flow, the lower is given.
// Source: FHWA HEC-22 4th ed., chapters 4 and 6.
#pragma once

#include <cstdint>

namespace yardwright::drain {

struct Pipe {
  double diameter_m = 0;
  double slope_ratio = 0;
  double roughness_n = 0.013;
};

/// Bottom 0 is a V; side slope is run for one of rise.
struct Channel {
  double bottom_width_m = 0;
  double side_slope_ratio = 0;
  double slope_ratio = 0;
  double roughness_n = 0.03;
};

enum class FlowState : std::uint8_t {
  steady,
  dry,         ///< no flow was asked for
  surcharged,  ///< a pipe that cannot carry the flow with a free surface
  no_slope     ///< level or rising: Manning has no answer
};

struct UniformFlow {
  FlowState state = FlowState::dry;
  double flow_m3_per_s = 0;
  double depth_m = 0;
  double area_m2 = 0;
  double speed_m_per_s = 0;
  double froude_ratio = 0;  ///< under 1 is tranquil; 0 for a full pipe
};

/// What a pipe carries at a depth, from 0 to its diameter.
UniformFlow flow_at_depth(const Pipe& pipe, double depth_m);
UniformFlow flow_at_depth(const Channel& channel, double depth_m);

/// The depth at which a flow runs.
UniformFlow normal_flow(const Pipe& pipe, double flow_m3_per_s);
UniformFlow normal_flow(const Channel& channel, double flow_m3_per_s);

/// The depth at which a channel's flow has Froude number 1.
double critical_depth_m(const Channel& channel, double flow_m3_per_s);

}  // namespace yardwright::drain
