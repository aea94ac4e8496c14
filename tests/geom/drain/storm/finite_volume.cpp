#include "tests/geom/drain/storm/finite_volume.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace yardwright::drain::storm {

namespace {

constexpr double g = 9.81, dry_m = 1e-9, courant_ratio = 0.45;

double pressure(double depth_m) { return g / 2 * depth_m * depth_m; }

}  // namespace

FiniteVolume::FiniteVolume(std::vector<double> bed_m, std::vector<double> depth_m, double cell_m)
    : bed_m_{std::move(bed_m)}, depth_m_{std::move(depth_m)}, flow_m2_per_s_(depth_m_.size(), 0.0), cell_m_{cell_m} {}

double FiniteVolume::speed_m_per_s(std::size_t cell) const {
  return depth_m_[cell] > dry_m ? flow_m2_per_s_[cell] / depth_m_[cell] : 0;
}

double FiniteVolume::stable_step_s() const {
  double fastest = 1e-9;
  for (std::size_t i = 0; i < depth_m_.size(); ++i)
    fastest = std::max(fastest, std::abs(speed_m_per_s(i)) + std::sqrt(g * depth_m_[i]));
  return courant_ratio * cell_m_ / fastest;
}

FiniteVolume::Flux FiniteVolume::flux_between(std::size_t low, std::size_t high) const {
  const double sill_m = std::max(bed_m_[low], bed_m_[high]);
  const double h_l = std::max(0.0, bed_m_[low] + depth_m_[low] - sill_m), u_l = speed_m_per_s(low);
  const double h_r = std::max(0.0, bed_m_[high] + depth_m_[high] - sill_m), u_r = speed_m_per_s(high);
  const double c_l = std::sqrt(g * h_l), c_r = std::sqrt(g * h_r);
  // Einfeldt's speeds, with those of a front that runs onto a dry bed.
  const double s_l = std::min({u_l - c_l, u_r - c_r, h_l <= dry_m ? u_r - 2 * c_r : u_l - c_l, 0.0});
  const double s_r = std::max({u_l + c_l, u_r + c_r, h_r <= dry_m ? u_l + 2 * c_l : u_r + c_r, 0.0});
  if (s_r - s_l <= 0) return {0, pressure(depth_m_[low]), pressure(depth_m_[high])};
  const auto middle = [&](double f_l, double f_r, double v_l, double v_r) {
    return (s_r * f_l - s_l * f_r + s_l * s_r * (v_r - v_l)) / (s_r - s_l);
  };
  const double q_l = h_l * u_l, q_r = h_r * u_r;
  const double push = middle(q_l * u_l + pressure(h_l), q_r * u_r + pressure(h_r), q_l, q_r);
  return {middle(q_l, q_r, h_l, h_r), push + pressure(depth_m_[low]) - pressure(h_l),
          push + pressure(depth_m_[high]) - pressure(h_r)};
}

FiniteVolume::Flux FiniteVolume::wall_flux(std::size_t cell) const {
  return {0, pressure(depth_m_[cell]), pressure(depth_m_[cell])};
}

void FiniteVolume::step(double step_s) {
  const std::size_t cells = depth_m_.size();
  std::vector<Flux> west(cells + 1);
  west.front() = wall_flux(0);
  west.back() = wall_flux(cells - 1);
  for (std::size_t i = 1; i < cells; ++i) west[i] = flux_between(i - 1, i);
  const double ratio = step_s / cell_m_;
  for (std::size_t i = 0; i < cells; ++i) {
    depth_m_[i] = std::max(0.0, depth_m_[i] + ratio * (west[i].water - west[i + 1].water));
    flow_m2_per_s_[i] += ratio * (west[i].push_high - west[i + 1].push_low);
    if (depth_m_[i] <= dry_m) flow_m2_per_s_[i] = 0;
  }
  now_s_ += step_s;
}

void FiniteVolume::run_until(double until_s) {
  while (now_s_ < until_s) step(std::min(stable_step_s(), until_s - now_s_));
}

double FiniteVolume::stored_m2() const { return std::accumulate(depth_m_.begin(), depth_m_.end(), 0.0) * cell_m_; }

}  // namespace yardwright::drain::storm
