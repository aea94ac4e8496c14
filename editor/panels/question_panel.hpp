// The right side: the chosen question with its findings and its settings, or what is selected with its fields.
#pragma once

#include "editor/canvas/canvas.hpp"
#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

void show_right_side(const Workspace& work, const canvas::Rect& place);

}  // namespace yardwright::panels
