// Two mends together, where none alone will do: one of the finding's own with one of what it breaks, or a part of one of its own
// with a part of another.
#pragma once

#include "geom/grow/change.hpp"

namespace yardwright::grow {

/// The proven one that is worth the least of those tried; `harmful` are the finding's own that break something.
std::optional<Change> paired_change(const Prover& prover, const std::vector<Change>& harmful);

}  // namespace yardwright::grow
