// A grain: its test weight, and the two different angles at which it lies. The angle at which it heaps when
// filled is not the angle at which it stays behind when a sump draws it out.
#pragma once

#include <string>

#include "geom/units/angle.hpp"

namespace yardwright {

struct Grain {
  std::string id;
  std::string name;
  double test_weight_lb_per_bu = 0;
  Angle filling;
  Angle emptying;
  std::string source;
  bool operator==(const Grain&) const = default;
};

}  // namespace yardwright
