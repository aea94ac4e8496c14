// The storm of the Drain question: what fails in it, running it beside the window, and what it told of pits and walls.
#pragma once

#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

void show_storm_card(const Workspace& work);

}  // namespace yardwright::panels
