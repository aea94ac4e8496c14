#include "geom/turn/least_change.hpp"

#include <algorithm>

namespace yardwright::turn {

namespace {

std::optional<double> least(double most, double exact, double growth, const std::function<bool(double)>& passes) {
  double too_little = 0, enough = most / 64;
  while (!passes(enough)) {
    if (enough >= most) return std::nullopt;
    too_little = enough;
    enough = std::min(enough * growth, most);
  }
  while (enough - too_little > exact) {
    const double middle = (too_little + enough) / 2;
    (passes(middle) ? enough : too_little) = middle;
  }
  return enough;
}

}  // namespace

std::optional<double> least_that_passes(double most, double exact, const std::function<bool(double)>& passes) {
  return least(most, exact, 2, passes);
}

std::optional<double> least_in_small_steps(double most, double exact, const std::function<bool(double)>& passes) {
  return least(most, exact, 1.25, passes);
}

}  // namespace yardwright::turn
