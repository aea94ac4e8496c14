#include "geom/clear/gap.hpp"

namespace yardwright::clear {

std::optional<Gap> tightest_of(const Solid& solid, const Yard& yard, double below_m, const BetweenTwo& between) {
  std::optional<Gap> tightest;
  for (const Solid& other : yard.solids) {
    if (other.item->id == solid.item->id) continue;
    auto gap = between(solid, other, yard, below_m);
    if (!gap || gap->margin_m() >= below_m) continue;
    below_m = gap->margin_m();
    tightest = std::move(gap);
  }
  return tightest;
}

}  // namespace yardwright::clear
