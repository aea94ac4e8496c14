// Below the plan: the chosen spout seen from the side, to scale in both directions, with what would mend it in dotted
// green.
#pragma once

#include "editor/canvas/canvas.hpp"
#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

void show_side_view(const Workspace& work, const canvas::Rect& place);

}  // namespace yardwright::panels
