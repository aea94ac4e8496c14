// Who takes what a yard has lost: the things planned without which it is there again.
#pragma once

#include <functional>

#include "geom/site/site.hpp"

namespace yardwright::grow {

/// The latest phase of which something stands in the yard.
int latest_phase(const Site& site);

/// Whether the yard has it with some things gone, and what hangs on them.
using HasWithout = std::function<bool(const std::vector<ItemId>&)>;

/// One alone, the last placed first; where none is the reason alone, those of the last placed that must all go. Nothing where
/// the yard has not got it without all of `placed` either.
std::vector<ItemId> culprits_among(const std::vector<ItemId>& placed, const HasWithout& has);

/// "Store 4", "Store 3 and Store 4", "Store 3, Store 4 and 2 more".
std::string titles_of(const Site& site, const std::vector<ItemId>& items);

}  // namespace yardwright::grow
