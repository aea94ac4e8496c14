// A line in pixels, made as light as it can be without being seen: a contour over a million cells has more points than
// the window has pixels, and most of it lies outside the window.
#pragma once

#include <imgui.h>

#include <vector>

namespace yardwright::canvas {

struct ScreenLine {
  std::vector<ImVec2> points;
  bool closed = false;
};

struct ScreenBox {
  ImVec2 low, high;
};

/// A long line without the points that lie within a pixel of the one before; its ends stay. A short line is left as it is.
ScreenLine thinned(ScreenLine line);

/// The parts of it that may be seen in a box: a piece is left out where it lies beyond one side by more than the width.
std::vector<ScreenLine> seen_parts(ScreenLine line, const ScreenBox& box, float width_px);

}  // namespace yardwright::canvas
