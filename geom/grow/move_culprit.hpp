// Moves of what spoils the yard's growth: to the nearest of the places tried where it is against no rule, after which Grow,
// asked again of the yard so changed, no longer finds it and finds nothing new. docs/methods/grow.md
#pragma once

#include "geom/grow/foresight.hpp"
#include "geom/site/mend_search.hpp"

namespace yardwright::grow {

/// Adds them to the findings of `foresee`, which are among all that Grow found. One that names a single thing that may be moved
/// gets its move, where one is found; where the next thing lacks an outlet alone, a larger distributor.
void add_moves(Findings& findings, const Outlook& outlook, MendSearch& search);

}  // namespace yardwright::grow
