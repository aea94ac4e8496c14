// The hours of a storm along a line on the screen, with the moment that the plan shows, which the pointer drags.
#pragma once

#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

/// From hours to the screen.
struct TimeFrame {
  ImVec2 low, high;  ///< of the field, top left and bottom right
  double start_s, end_s;

  float x(double time_s) const;
  double time_s(float at_x) const;
};

/// A new storm is shown when most water runs; before plan and side view draw it.
void go_to_height(const Workspace& work);

void draw_hours(const Workspace& work, const TimeFrame& frame, ImDrawList& list);
void draw_moment(const Workspace& work, const TimeFrame& frame, ImDrawList& list);

}  // namespace yardwright::panels
