// Reach over the plan: every spout in the colour of its worst finding with its angle, and the rings within which a bin
// of a size is reached.
#pragma once

#include "editor/canvas/answer_overlay.hpp"

namespace yardwright::canvas {

void draw_reach(const AnswerInput& input, ImDrawList& list);

/// A small rounded label with an edge.
void draw_label(const std::string& text, ImVec2 middle, Colour colour, const look::Look& look, ImDrawList& list);

}  // namespace yardwright::canvas
