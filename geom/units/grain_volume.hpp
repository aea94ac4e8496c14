// A volume of grain. Bushels are US (Winchester) bushels of 2150.42 cubic inches, a measure of volume; a
// weight needs the test weight of the grain.
// Source: "Test weight", en.wikipedia.org/wiki/Test_weight, citing USDA (read); 1 in = 0.0254 m exactly.
#pragma once

#include <compare>

namespace yardwright {

inline constexpr double cubic_metres_per_bushel = 2150.42 * 0.0254 * 0.0254 * 0.0254;
inline constexpr double kilograms_per_pound = 0.45359237;

class GrainVolume {
 public:
  constexpr GrainVolume() = default;
  static constexpr GrainVolume cubic_metres(double value) { return GrainVolume{value}; }
  static constexpr GrainVolume bushels(double value) { return GrainVolume{value * cubic_metres_per_bushel}; }

  constexpr double as_cubic_metres() const { return cubic_metres_; }
  constexpr double as_bushels() const { return cubic_metres_ / cubic_metres_per_bushel; }
  /// Metric tonnes at a test weight in pounds a bushel.
  constexpr double as_tonnes(double test_weight_lb_per_bu) const {
    return as_bushels() * test_weight_lb_per_bu * kilograms_per_pound / 1000.0;
  }

  constexpr GrainVolume operator+(GrainVolume other) const { return GrainVolume{cubic_metres_ + other.cubic_metres_}; }
  constexpr GrainVolume operator-(GrainVolume other) const { return GrainVolume{cubic_metres_ - other.cubic_metres_}; }
  constexpr GrainVolume& operator+=(GrainVolume other) { return *this = *this + other; }
  constexpr GrainVolume operator*(double factor) const { return GrainVolume{cubic_metres_ * factor}; }
  constexpr auto operator<=>(const GrainVolume&) const = default;

 private:
  explicit constexpr GrainVolume(double cubic_metres) : cubic_metres_{cubic_metres} {}
  double cubic_metres_ = 0;
};

}  // namespace yardwright
