// Draws a Drawing with Dear ImGui: what the plan, the side view, the icons and the overlays all go through.
#pragma once

#include <imgui.h>

#include "editor/canvas/look.hpp"
#include "geom/sheet/drawing.hpp"

namespace yardwright::canvas {

/// `y_up` as in the Drawing.
ImVec2 on_screen(DrawPoint point, const Placement& placement, bool y_up);

void draw(const Drawing& drawing, const Placement& placement, const look::Look& look, ImDrawList& list);

/// Words anywhere, turned or with a halo. Size in pixels.
void draw_words(const TextMark& words, ImVec2 at, float size_px, const look::Look& look, ImDrawList& list);

}  // namespace yardwright::canvas
