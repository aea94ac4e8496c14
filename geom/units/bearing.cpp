#include "geom/units/bearing.hpp"

#include <array>
#include <cmath>

namespace yardwright {

Bearing Bearing::degrees(double clockwise_from_north) {
  Bearing bearing;
  bearing.degrees_ = clockwise_from_north;
  if (clockwise_from_north >= 0 && clockwise_from_north < 360) return bearing;
  bearing.degrees_ = std::fmod(clockwise_from_north, 360.0);
  if (bearing.degrees_ < 0) bearing.degrees_ += 360.0;
  if (bearing.degrees_ >= 360.0) bearing.degrees_ = 0;
  return bearing;
}

Bearing Bearing::of(double east, double north) {
  if (east == 0 && north == 0) return {};
  return degrees(Angle::radians(std::atan2(east, north)).as_degrees());
}

double Bearing::east() const { return sin(Angle::degrees(degrees_)); }

double Bearing::north() const { return cos(Angle::degrees(degrees_)); }

Bearing Bearing::turned(Angle clockwise) const { return degrees(degrees_ + clockwise.as_degrees()); }

Angle between(Bearing a, Bearing b) {
  return Angle::degrees(std::abs(std::remainder(a.as_degrees() - b.as_degrees(), 360.0)));
}

std::string_view compass_point(Bearing bearing) {
  static constexpr std::array<std::string_view, 8> points{"north", "north-east", "east", "south-east",
                                                          "south", "south-west", "west", "north-west"};
  return points[static_cast<std::size_t>(std::lround(bearing.as_degrees() / 45)) % points.size()];
}

}  // namespace yardwright
