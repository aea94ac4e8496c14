// The tray at the left: everything that can be put on the plan, an icon with its word.
#pragma once

#include "editor/canvas/canvas.hpp"
#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

void show_tray(const Workspace& work, const canvas::Rect& place);

}  // namespace yardwright::panels
