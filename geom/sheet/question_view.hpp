// What the plan of a question shows: the part of the yard that it is about, and the key to its lines.
#pragma once

#include "geom/check/check.hpp"
#include "geom/sheet/sheet_column.hpp"

namespace yardwright {

/// Reach and pace: what is filled and what fills it. Turn: where the vehicles drive. Clear: what the distances are
/// between. Drain: the whole yard.
Box ground_of(Question question, const Site& site, const Answers& answers);

/// `style` is that of the plan.
std::vector<KeyRow> key_of(Question question, const Site& site, const Answers& answers, const PlanStyle& style);

}  // namespace yardwright
