// New ids for items that are put into a yard, carried on to what points at them.
#pragma once

#include <map>

#include "geom/site/edit.hpp"

namespace yardwright::session {

using NewIds = std::map<ItemId, ItemId>;  ///< from the old one

/// Points at the new id wherever a field of the item names an old one; the item's own id too.
Item with_new_ids(Item item, const NewIds& ids);

/// The edits of a mend that was found in the yard as of a phase, as they are done to the whole yard: what is put anew
/// must not take the id of an item that was left out, being of a later phase or gone.
Edits edits_of_whole(const Site& site, int phase, const Edits& edits);

}  // namespace yardwright::session
