// Where everything stands in the window: the tray left, the questions on top, the chosen question right, the side
// view below the plan. The same at every size; below the least height the side view gives way.
#pragma once

#include "editor/canvas/canvas.hpp"

namespace yardwright::panels {

struct Layout {
  canvas::Rect top, tray, plan, side, right;
  bool has_side = true;
};

inline Layout layout_of(ImVec2 window, const look::Look& look) {
  const float top = look.px(look::top_px), tray = look.px(look::tray_px), right = window.x - look.px(look::right_px);
  Layout layout;
  layout.has_side = window.y >= look.px(560);
  const float side = layout.has_side ? window.y - look.px(look::side_px) : window.y;
  layout.top = {{0, 0}, {window.x, top}};
  layout.tray = {{0, top}, {tray, window.y}};
  layout.plan = {{tray, top}, {right, side}};
  layout.side = {{tray, side}, {right, window.y}};
  layout.right = {{right, top}, window};
  return layout;
}

/// The lines between the panels.
void show_edges(const Layout& layout, const look::Look& look);

}  // namespace yardwright::panels
