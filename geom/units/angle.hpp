// An angle as a type, so that degrees and radians cannot be mixed up. It holds degrees, the unit that
// people type, so that a typed 37 comes back as 37 and quarter turns are exact.
#pragma once

#include <compare>

namespace yardwright {

class Angle {
 public:
  constexpr Angle() = default;
  static constexpr Angle degrees(double value) { return Angle{value}; }
  static Angle radians(double value);
  /// The slope angle of a fall over a plan run; a run of zero is a vertical.
  static Angle of_slope(double rise_m, double run_m);

  constexpr double as_degrees() const { return degrees_; }
  double as_radians() const;

  constexpr Angle operator-() const { return Angle{-degrees_}; }
  constexpr Angle operator+(Angle other) const { return Angle{degrees_ + other.degrees_}; }
  constexpr Angle operator-(Angle other) const { return Angle{degrees_ - other.degrees_}; }
  constexpr Angle operator*(double factor) const { return Angle{degrees_ * factor}; }
  constexpr auto operator<=>(const Angle&) const = default;

 private:
  explicit constexpr Angle(double degrees) : degrees_{degrees} {}
  double degrees_ = 0;
};

/// Exact at every quarter turn.
double sin(Angle angle);
double cos(Angle angle);
double tan(Angle angle);

}  // namespace yardwright
