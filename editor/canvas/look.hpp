// How the window looks: its colours, its letters and its measures, at one UI scale. Inter is found by fontconfig;
// where it is missing, Dear ImGui's own font is used and the status line says so.
#pragma once

#include <imgui.h>

#include "geom/sheet/palette.hpp"
#include "geom/site/finding.hpp"

namespace yardwright::canvas {
class PictureCache;
}

namespace yardwright::look {

struct Letters {
  ImFont* small = nullptr;   ///< 12 px at scale 1
  ImFont* plain = nullptr;   ///< 14 px
  ImFont* strong = nullptr;  ///< 14 px, semi-bold
  ImFont* title = nullptr;   ///< 19 px, bold
  bool is_inter = false;
};

struct Look {
  float scale = 1;
  Letters letters;
  canvas::PictureCache* pictures = nullptr;  ///< never null once the window stands

  float px(double at_scale_1) const { return static_cast<float>(at_scale_1) * scale; }
  /// Paper millimetres on the screen: strokes and letters of a Drawing.
  double px_per_mm() const { return 5 * static_cast<double>(scale); }
};

inline constexpr double tray_px = 116, top_px = 52, right_px = 348, side_px = 230;

ImU32 packed(Colour colour);
ImVec4 unpacked(Colour colour);

/// Adds the letters to ImGui's atlas. Call once the context stands and before the first frame.
Letters load_letters(float scale);
void set_style(float scale);

/// 1 at 1366 x 768, 2.25 at 4K, in quarters, unless YARDWRIGHT_UI_SCALE says otherwise.
float scale_for(unsigned width_px, unsigned height_px);

}  // namespace yardwright::look
