// The shortest move of one thing that mends a finding about it and breaks no other: to the nearest place of its allowed region, the
// thing taken out of the yard and put back. What it broke already where it stands does not bind it there, but for the finding.
#pragma once

#include "geom/grow/keep_off.hpp"
#include "geom/grow/prover.hpp"

namespace yardwright::grow {

/// Why things of one yard may not stand where, in the yard without them; remembered, since it takes as long as a check.
class KnownReasons {
 public:
  /// Nothing for what covers no ground.
  const KeepOffs& of(const Item& item, const CheckedYard& yard);

 private:
  std::map<ItemId, KeepOffs> known_;
};

/// Proven, and no longer than about so far; nothing where no place that is tried will do, or none of the reasons is the finding's own.
std::optional<Mend> move_into_room(const Prover& prover, const Item& item, const KeepOffs& reasons);

}  // namespace yardwright::grow
