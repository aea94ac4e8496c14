// The shortest move of one thing that mends a finding about it and breaks no other: to the nearest place of its allowed region, the
// thing taken out of the yard and put back. What it broke already where it stands does not bind it there, but for the finding.
#pragma once

#include "geom/grow/keep_off.hpp"
#include "geom/grow/prover.hpp"

namespace yardwright::grow {

/// Why the thing may not stand where, in a yard without it; nothing for what covers no ground.
KeepOffs reasons_without(const CheckedYard& yard, const Item& item);

/// Proven, and no longer than about so far; nothing where no place that is tried will do, or none of the reasons is the finding's own.
std::optional<Mend> move_into_room(const Prover& prover, const Item& item, const KeepOffs& reasons);

}  // namespace yardwright::grow
