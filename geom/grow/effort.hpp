// What a change is worth, so that unlike ones can be told apart: in metres of a move of something that is not built yet. A rough
// judgement of our own, in the rule book (grow.effort-*) where a yard can set its own. No price.
#pragma once

#include "geom/site/finding.hpp"

namespace yardwright::grow {

/// Of a mend of the site; within one way of mending the least amount is worth the least.
double effort_m(const Site& site, const Mend& mend, const RuleBook& rules);

}  // namespace yardwright::grow
