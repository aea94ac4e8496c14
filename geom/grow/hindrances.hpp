// What stands in the way of a phase: things of the phases before without which a finding of it passes or is gone.
// docs/methods/grow.md
#pragma once

#include "geom/grow/harm.hpp"
#include "geom/grow/phases.hpp"

namespace yardwright::grow {

/// Of findings of the phase as of which the yard was checked, found by asking again with one thing gone, and where none alone
/// is the reason, with all that one phase adds. What the phase needs itself (its leg, its dump) is never told.
std::vector<Hindrance> hindrances_of(const CheckedYard& yard, int phase, const Findings& wanting);

}  // namespace yardwright::grow
