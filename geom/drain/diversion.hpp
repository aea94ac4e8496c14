// Berms and swales that turn the ground's water past a pit, as mends: laid across the way of its water like a contour that falls
// a little, to where the ground drains elsewhere; sized for the flow that they turn; the shortest that passes, with nothing
// else in the yard wetter for it. Page: docs/methods/drain.md
#pragma once

#include <functional>

#include "geom/drain/drain.hpp"

namespace yardwright::drain {

/// What Drain would answer for a changed yard.
using AskAgain = std::function<Answer(const Site&)>;

/// Adds them to the findings of pits that water reaches.
void offer_diversions(Answer& answer, const Site& site, const DesignSurface& surface, const RuleBook& rules,
                      const AskAgain& ask_again, MendSearch& search);

}  // namespace yardwright::drain
