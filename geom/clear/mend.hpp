// The least changes after which a gap keeps its limit: moving either thing, lowering a bin under a line, turning a
// fan, widening a boot pit. Each is found by asking the gap's own check of a yard with the changed thing in it.
#pragma once

#include "geom/clear/gap.hpp"

namespace yardwright::clear {

/// Wells and dwellings stay where they are.
bool may_move(const Item& item);

/// The best first: turning and lowering, then moves of what is built last.
std::vector<Mend> mends_for(const Gap& gap, const Check& check, const Yard& yard);

}  // namespace yardwright::clear
