#include "geom/clear/demands.hpp"

#include <limits>

#include "geom/clear/spacing.hpp"

namespace yardwright::clear {

std::vector<Demand> demands_on(const Solid& newcomer, const Yard& yard) {
  std::vector<Demand> demands;
  for (const Check& check : spacing_checks(yard.rules)) {
    for (const Solid& other : yard.solids) {
      if (other.item->id == newcomer.item->id) continue;
      const auto gap = check.between(newcomer, other, yard, std::numeric_limits<double>::infinity());
      if (gap) demands.push_back({&other, gap->rule, gap->required_m, gap->worse, check.breaks});
    }
  }
  return demands;
}

}  // namespace yardwright::clear
