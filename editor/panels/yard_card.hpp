// What the whole yard says: title block, lot, phases, storm, ground, pictures; and the cards of an edge of the lot and
// of a picture that is being fitted.
#pragma once

#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

void show_yard_card(const Workspace& work);
void show_lot_edge_card(const Workspace& work, int edge);
void show_fit_card(const Workspace& work);

/// The storm's fields, which Drain is asked with.
void show_storm(const Workspace& work);

}  // namespace yardwright::panels
