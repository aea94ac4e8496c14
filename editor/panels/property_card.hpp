// What is selected, with every field of its kind, typed in any unit.
#pragma once

#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

void show_property_card(const Workspace& work, const Item& item);
/// Turn, duplicate, remove.
void show_selection_actions(const Workspace& work);

}  // namespace yardwright::panels
