// Below the plan: the chosen spout seen from the side, to scale in both directions, with what would mend it in dotted
// green; in Drain the ground cut along a line, or the storm in the pits.
#pragma once

#include "editor/canvas/canvas.hpp"
#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

void show_side_view(const Workspace& work, const canvas::Rect& place);

}  // namespace yardwright::panels
