// What is done to the selected items, as edits of the site.
#pragma once

#include "geom/site/edit.hpp"

namespace yardwright::session {

using Selection = std::vector<ItemId>;

Edits moved(const Site& site, const Selection& selection, SiteVector by);
/// Turned together about the middle of the selection.
Edits turned(const Site& site, const Selection& selection, Angle clockwise);
Edits removed(const Selection& selection);

struct Duplicated {
  Edits edits;
  Selection copies;
};
/// Copies beside the originals with ids of their own, built in a phase; spouts, conveyors and route stops between copied
/// items join the copies.
Duplicated duplicated(const Site& site, const Selection& selection, SiteVector by, int phase);

/// The selection without items that no longer exist.
Selection still_there(const Site& site, const Selection& selection);

}  // namespace yardwright::session
