// A direction on the plan, clockwise from north as surveyors give it, kept in [0, 360) degrees.
#pragma once

#include <compare>
#include <string_view>

#include "geom/units/angle.hpp"

namespace yardwright {

class Bearing {
 public:
  constexpr Bearing() = default;
  static Bearing degrees(double clockwise_from_north);
  /// Of a vector that goes `east` and `north`; a zero vector faces north.
  static Bearing of(double east, double north);

  constexpr double as_degrees() const { return degrees_; }
  double east() const;   ///< east part of the unit vector
  double north() const;  ///< north part of the unit vector

  Bearing turned(Angle clockwise) const;
  constexpr auto operator<=>(const Bearing&) const = default;

 private:
  double degrees_ = 0;
};

/// The smaller turn between two bearings, 0 to 180 degrees.
Angle between(Bearing a, Bearing b);

/// The nearest of the eight points of the compass: "south-east".
std::string_view compass_point(Bearing bearing);

}  // namespace yardwright
