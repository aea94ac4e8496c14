// What lies over the plan while it is worked on: selection and its handles, the line being drawn, the snap mark, the
// scale bar and the north arrow.
#pragma once

#include "editor/canvas/pointer.hpp"

namespace yardwright::canvas {

struct OverlayInput {
  const session::Session& session;
  const session::View& view;
  const Pointer& pointer;
  const look::Look& look;
};

void draw_selection(const OverlayInput& input, ImDrawList& list);
void draw_tool(const OverlayInput& input, ImDrawList& list);
void draw_scale_bar(const OverlayInput& input, ImDrawList& list);
void draw_north_arrow(const OverlayInput& input, ImDrawList& list);

ImVec2 on_screen(const session::View& view, SitePoint point);

}  // namespace yardwright::canvas
