// The plan in the middle of the window: its drawing, what lies over it, and the pointer on it.
#pragma once

#include "editor/canvas/overlay.hpp"
#include "editor/canvas/plan_cache.hpp"
#include "editor/canvas/pointer.hpp"
#include "editor/session/pictures.hpp"

namespace yardwright::canvas {

struct Canvas {
  session::View view;
  Pointer pointer;
  PlanCache plan;
  session::HeldPictures pictures;
};

struct Rect {
  ImVec2 low, high;
};

/// Draws the plan into the rectangle and lets the pointer work on it. `overlay` draws the chosen question's answer
/// between the plan and the selection.
template <class Overlay>
void show(Canvas& canvas, session::Session& session, const Rect& place, const look::Look& look, Overlay overlay);

/// The parts of show(): the plan's area takes the pointer and is filled; then what lies on top.
ImDrawList& begin_plan(Canvas& canvas, session::Session& session, const Rect& place, const look::Look& look);
void end_plan(Canvas& canvas, const session::Session& session, const look::Look& look, ImDrawList& list);

Placement placement_of(const session::View& view, const look::Look& look);

template <class Overlay>
void show(Canvas& canvas, session::Session& session, const Rect& place, const look::Look& look, Overlay overlay) {
  ImDrawList& list = begin_plan(canvas, session, place, look);
  overlay(canvas.view, list);
  end_plan(canvas, session, look, list);
}

}  // namespace yardwright::canvas
