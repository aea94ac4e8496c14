#include "geom/turn/least_change.hpp"

namespace yardwright::turn {

std::optional<double> least_that_passes(double most, double exact, const std::function<bool(double)>& passes) {
  double too_little = 0, enough = most / 64;
  while (!passes(enough)) {
    if (enough >= most) return std::nullopt;
    too_little = enough;
    enough *= 2;
  }
  while (enough - too_little > exact) {
    const double middle = (too_little + enough) / 2;
    (passes(middle) ? enough : too_little) = middle;
  }
  return enough;
}

}  // namespace yardwright::turn
