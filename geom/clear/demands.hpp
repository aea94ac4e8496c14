// What Clear asks of a thing that is not placed yet: how far it must stay from each thing that stands. The checks that
// judge the yard answer; where it can be placed is for geom/grow to find.
#pragma once

#include "geom/clear/gap.hpp"

namespace yardwright::clear {

/// A distance between walls, the same wherever the newcomer stands.
struct Demand {
  const Solid* other = nullptr;
  const Rule* rule = nullptr;
  double required_m = 0;
  Verdict worse = Verdict::fail;
  std::string breaks;  ///< "stands too near to"
};

/// Of every solid of the yard but itself; the widest for each pair and check. An LP tank is taken to stand with others.
std::vector<Demand> demands_on(const Solid& newcomer, const Yard& yard);

}  // namespace yardwright::clear
