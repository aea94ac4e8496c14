#include "geom/drain/unit_hydrograph.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "geom/drain/runoff.hpp"

namespace yardwright::drain {

namespace {

constexpr double step_s = 60;
constexpr double shortest_concentration_s = 360;
constexpr double longest_time_ratio = 5;

struct UnitPoint {
  double time_ratio, flow_ratio;
};
constexpr std::array unit_points{
    UnitPoint{0.0, 0.000}, UnitPoint{0.1, 0.030}, UnitPoint{0.2, 0.100}, UnitPoint{0.3, 0.190}, UnitPoint{0.4, 0.310},
    UnitPoint{0.5, 0.470}, UnitPoint{0.6, 0.660}, UnitPoint{0.7, 0.820}, UnitPoint{0.8, 0.930}, UnitPoint{0.9, 0.990},
    UnitPoint{1.0, 1.000}, UnitPoint{1.1, 0.990}, UnitPoint{1.2, 0.930}, UnitPoint{1.3, 0.860}, UnitPoint{1.4, 0.780},
    UnitPoint{1.5, 0.680}, UnitPoint{1.6, 0.560}, UnitPoint{1.7, 0.460}, UnitPoint{1.8, 0.390}, UnitPoint{1.9, 0.330},
    UnitPoint{2.0, 0.280}, UnitPoint{2.2, 0.207}, UnitPoint{2.4, 0.147}, UnitPoint{2.6, 0.107}, UnitPoint{2.8, 0.077},
    UnitPoint{3.0, 0.055}, UnitPoint{3.2, 0.040}, UnitPoint{3.4, 0.029}, UnitPoint{3.6, 0.021}, UnitPoint{3.8, 0.015},
    UnitPoint{4.0, 0.011}, UnitPoint{4.5, 0.005}, UnitPoint{5.0, 0.000},
};

/// The part of a step's runoff that leaves in each later step; they sum to 1, so that no water is lost.
std::vector<double> unit_shares(double concentration_s) {
  const double peak_s = step_s / 2 + 0.6 * std::max(concentration_s, shortest_concentration_s);  // D/2 + lag
  std::vector<double> shares;
  for (int step = 1; step * step_s < longest_time_ratio * peak_s; ++step)
    shares.push_back(unit_flow_ratio(step * step_s / peak_s));
  const double sum = std::accumulate(shares.begin(), shares.end(), 0.0);
  for (double& share : shares) share /= sum;
  return shares;
}

}  // namespace

double unit_flow_ratio(double time_ratio) {
  if (time_ratio <= 0 || time_ratio >= longest_time_ratio) return 0;
  const auto above = std::ranges::upper_bound(unit_points, time_ratio, {}, &UnitPoint::time_ratio);
  const UnitPoint &a = *(above - 1), &b = *above;
  return std::lerp(a.flow_ratio, b.flow_ratio, (time_ratio - a.time_ratio) / (b.time_ratio - a.time_ratio));
}

double Hydrograph::volume_m3() const {
  return std::accumulate(flow_m3_per_s.begin(), flow_m3_per_s.end(), 0.0) * step_s;
}

std::vector<double> excess_by_step_m(double rain_m, double curve_number, const MassCurve& curve, double step) {
  std::vector<double> excess_m;
  double before_m = 0;
  const int steps = static_cast<int>(std::ceil(curve.points.back().time_s / step - 1e-9));
  for (int i = 1; i <= steps; ++i) {
    const double now_m = runoff_depth_m(rain_m * curve.fallen_ratio(i * step), curve_number);
    excess_m.push_back(now_m - before_m);
    before_m = now_m;
  }
  return excess_m;
}

// Peak of the unit hydrograph: 484 A Q / tp (cfs, square miles, inches, hours), tp = D/2 + 0.6 Tc. Its ordinates at
// the steps are scaled to the runoff's volume, which is what 484 stands for.
Hydrograph storm_hydrograph(double area_m2, double curve_number, double rain_m, double concentration_s,
                            const MassCurve& curve) {
  const std::vector<double> excess_m = excess_by_step_m(rain_m, curve_number, curve, step_s);
  const std::vector<double> shares = unit_shares(concentration_s);
  Hydrograph hydrograph{step_s, std::vector<double>(excess_m.size() + shares.size(), 0.0)};
  for (std::size_t i = 0; i < excess_m.size(); ++i) {
    if (excess_m[i] <= 0) continue;
    const double flow_m3_per_s = excess_m[i] * area_m2 / step_s;
    for (std::size_t j = 0; j < shares.size(); ++j) hydrograph.flow_m3_per_s[i + j] += flow_m3_per_s * shares[j];
  }
  return hydrograph;
}

HydrographPeak peak_of(const Hydrograph& hydrograph) {
  const auto most = std::ranges::max_element(hydrograph.flow_m3_per_s);
  if (most == hydrograph.flow_m3_per_s.end() || *most <= 0) return {};
  return {*most, static_cast<double>(most - hydrograph.flow_m3_per_s.begin() + 1) * hydrograph.step_s};
}

}  // namespace yardwright::drain
