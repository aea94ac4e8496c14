// A mend by a part of it, so that mends can be made as small as they may be, or larger where the least breaks something, and
// two of them be halved: how far a leg is raised, how far a bin is moved.
#pragma once

#include "geom/site/finding.hpp"

namespace yardwright::grow {

/// Whether a little less of it, or more, is a mend of its kind: a move, a turn, a height. Not a choice, a count, a new line
/// on the plan, or what is sold in sizes.
bool comes_in_parts(const Site& site, const Mend& mend);

/// `site` is the one that it mends; part 1 is all of it. `onto`, much the same site, is what it is then done to. Nothing where
/// a field would leave its limits, and of what comes whole only.
std::optional<Mend> part_of(const Mend& mend, double part, const Site& site, const Site& onto);

}  // namespace yardwright::grow
