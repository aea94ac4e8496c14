#include "geom/drain/openings.hpp"

#include <algorithm>
#include <cmath>

namespace yardwright::drain {

namespace {

constexpr double gravity_m_per_s2 = 9.81;
constexpr double grate_orifice_ratio = 0.67;  // HEC-22, chapter 7

}  // namespace

double weir_m3_per_s(double coefficient_ratio, double length_m, double head_m) {
  if (head_m <= 0) return 0;
  return coefficient_ratio * length_m * std::sqrt(2 * gravity_m_per_s2) * head_m * std::sqrt(head_m);
}

// Villemonte 1947 (from memory): (1 - (far head / head)^1.5)^0.385.
double drowned_weir_ratio(double head_m, double far_head_m) {
  if (far_head_m <= 0) return 1;
  if (far_head_m >= head_m) return 0;
  return std::pow(1 - std::pow(far_head_m / head_m, 1.5), 0.385);
}

double orifice_m3_per_s(double coefficient_ratio, double area_m2, double head_m) {
  return head_m <= 0 ? 0 : coefficient_ratio * area_m2 * std::sqrt(2 * gravity_m_per_s2 * head_m);
}

double grate_m3_per_s(const Grate& grate, double depth_m) {
  const double edge_m = 2 * (grate.width_m + grate.length_m) * grate.working_ratio;
  const double clear_m2 = grate.width_m * grate.length_m * grate.open_ratio * grate.working_ratio;
  return std::min(weir_m3_per_s(sharp_weir_ratio, edge_m, depth_m),
                  orifice_m3_per_s(grate_orifice_ratio, clear_m2, depth_m));
}

}  // namespace yardwright::drain
