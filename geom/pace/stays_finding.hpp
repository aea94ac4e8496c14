// Judges how much grain a bin's centre sump leaves on the floor: little work for a dry store that is swept once
// a year, a daily burden for wet holding.
#pragma once

#include "geom/pace/pace.hpp"

namespace yardwright::pace {

/// Of one bin, with the least higher eave and the hopper floor that would mend it.
Finding stays_finding(const Item& item, const BinReport& report, const Grain& grain, const RuleBook& rules);

}  // namespace yardwright::pace
