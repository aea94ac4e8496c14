// The row on top: the yard's name and file, the phase, the six questions with their verdicts, the units.
#pragma once

#include "editor/canvas/canvas.hpp"
#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

void show_top_row(const Workspace& work, const canvas::Rect& place);

}  // namespace yardwright::panels
