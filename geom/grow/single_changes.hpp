// Changes of one thing in one way that mend a finding: its own mends, as they are or some more of them; a move into the
// thing's allowed region; a turn.
#pragma once

#include "geom/grow/change.hpp"
#include "geom/grow/room_to_move.hpp"

namespace yardwright::grow {

/// `reasons` are those of the yard that is mended.
Found single_changes(const Prover& prover, KnownReasons& reasons);

/// The change with as little of a mend that holds as will do: a little less of it does not hold. `fails_part` is a part of it that is
/// known not to; 1 where it is taken to be the least already.
Change lessened(const Prover& prover, const Mend& mend, double fails_part);

}  // namespace yardwright::grow
