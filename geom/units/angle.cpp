#include "geom/units/angle.hpp"

#include <cmath>
#include <numbers>

namespace yardwright {

namespace {

constexpr double degrees_per_radian = 180.0 / std::numbers::pi;

}  // namespace

Angle Angle::radians(double value) { return Angle{value * degrees_per_radian}; }

Angle Angle::of_slope(double rise_m, double run_m) { return radians(std::atan2(rise_m, run_m)); }

double Angle::as_radians() const { return degrees_ / degrees_per_radian; }

double sin(Angle angle) {
  const double turned = std::remainder(angle.as_degrees(), 360.0);
  if (std::remainder(turned, 180.0) == 0) return 0;
  if (turned == 90) return 1;
  if (turned == -90) return -1;
  return std::sin(Angle::degrees(turned).as_radians());
}

double cos(Angle angle) {
  const double turned = std::remainder(angle.as_degrees(), 360.0);
  if (turned == 0) return 1;
  if (std::abs(turned) == 90) return 0;
  if (std::abs(turned) == 180) return -1;
  return std::cos(Angle::degrees(turned).as_radians());
}

double tan(Angle angle) { return sin(angle) / cos(angle); }

}  // namespace yardwright
