// Changes of one thing in one way that mend a finding: its own mends, as they are or some more of them; a move into the
// thing's allowed region; a turn.
#pragma once

#include <functional>

#include "geom/grow/change.hpp"
#include "geom/grow/keep_off.hpp"

namespace yardwright::grow {

/// Why a thing of the yard may not stand where, in the yard without it.
using ReasonsOf = std::function<const KeepOffs&(const Item&)>;

Found single_changes(const Prover& prover, const ReasonsOf& reasons_of);

/// The change with as little of a mend that holds as will do: a little less of it does not hold. `fails_part` is a part of it that is
/// known not to; 1 where it is taken to be the least already.
Change lessened(const Prover& prover, const Mend& mend, double fails_part);

}  // namespace yardwright::grow
