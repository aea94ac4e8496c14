#include "geom/turn/off_tracking.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace yardwright::turn {

namespace {

double squared(double x) { return x * x; }

/// By how much the square of the front radius exceeds that of each unit's axle.
std::vector<double> squares_lost(const Vehicle& vehicle) {
  std::vector<double> lost;
  double sum = 0;
  for (const VehicleUnit& unit : vehicle.units) {
    sum += squared(unit.wheelbase_m);
    lost.push_back(sum);
    sum -= squared(unit.hitch_m);
  }
  return lost;
}

void widen_by_body(SteadyTurn& turn, const VehicleUnit& unit, double axle_radius_m) {
  if (unit.width_m <= 0) return;
  const double side_m = axle_radius_m + unit.width_m / 2;
  turn.inside_m = std::min(turn.inside_m, axle_radius_m - unit.width_m / 2);
  turn.outer_m = std::max({turn.outer_m, std::hypot(side_m, unit.wheelbase_m + unit.front_overhang_m),
                           std::hypot(side_m, unit.rear_overhang_m)});
}

}  // namespace

Angle link_angle_on_arc(double radius_m, double wheelbase_m, Angle swept) {
  // psi' = 1/R - sin(psi)/L, with m = R/L and theta = s/R; psi(0) = 0.
  const double m = radius_m / wheelbase_m, half_theta = swept.as_radians() / 2;
  if (half_theta == 0) return {};
  if (m == 1) return Angle::radians(2 * std::atan(half_theta / (half_theta + 1)));
  const double q = std::sqrt(std::abs(m * m - 1));
  const double rise = m > 1 ? q / std::tanh(q * half_theta) : q / std::tan(q * half_theta);
  return Angle::radians(2 * std::atan2(1, m + rise));
}

double trailing_radius_m(double radius_m, double wheelbase_m, Angle link_angle) {
  return std::sqrt(squared(radius_m) + squared(wheelbase_m) - 2 * radius_m * wheelbase_m * sin(link_angle));
}

Angle link_angle_on_straight(Angle at_start, double wheelbase_m, double distance_m) {
  return Angle::radians(2 * std::atan(tan(at_start * 0.5) * std::exp(-distance_m / wheelbase_m)));
}

std::optional<SteadyTurn> steady_state(const Vehicle& vehicle, double front_radius_m) {
  if (vehicle.units.empty() || front_radius_m <= least_steady_radius_m(vehicle)) return std::nullopt;
  const std::vector<double> lost = squares_lost(vehicle);
  SteadyTurn turn;
  turn.inside_m = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < lost.size(); ++i) {
    turn.axle_radius_m.push_back(std::sqrt(squared(front_radius_m) - lost[i]));
    widen_by_body(turn, vehicle.units[i], turn.axle_radius_m.back());
  }
  turn.off_tracking_m = front_radius_m - turn.axle_radius_m.back();
  return turn;
}

double least_steady_radius_m(const Vehicle& vehicle) {
  double most = 0;
  for (const double lost : squares_lost(vehicle)) most = std::max(most, lost);
  return std::sqrt(most);
}

}  // namespace yardwright::turn
