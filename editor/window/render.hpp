// A frame onto the screen: the grounds of the plan and of the panels by clearing, which costs a software OpenGL a tenth of
// filling them, then what Dear ImGui has drawn.
#pragma once

#include "editor/canvas/canvas.hpp"

namespace yardwright::window {

/// After ImGui::Render; `plan` is the rectangle that has the colour of paper.
void render(const canvas::Rect& plan);

}  // namespace yardwright::window
