// Draws in paper millimetres and knows how wide words are, for everything on a sheet that is not the plan: frames,
// title blocks, legends and tables. Every word is measured before it is set, so that none runs out of its box.
#pragma once

#include "geom/sheet/cairo_device.hpp"
#include "geom/sheet/symbol.hpp"

namespace yardwright {

struct TextStyle {
  double height_mm = 2.2;
  Colour colour = palette::ink;
  bool bold = false;
  Anchor anchor = Anchor::left;
};

class SheetPen {
 public:
  explicit SheetPen(const TextMeasure& measure) : measure_{&measure} { drawing_.y_up = false; }

  void line(SheetPoint from, SheetPoint to, const Stroke& stroke);
  void box(const SheetBox& box, Colour fill, const Stroke& edge);
  void polygon(const std::vector<SheetPoint>& corners, Colour fill, const Stroke& edge);
  void symbol(SheetPoint at, SymbolMarks marks);
  /// One line of words at its middle height.
  void words(SheetPoint at, const std::string& text, const TextStyle& style);
  /// The same in smaller letters where it is wider than `width_mm`.
  void fitted(SheetPoint at, const std::string& text, double width_mm, TextStyle style);
  /// Wrapped lines from a top left corner; the y below the last one.
  double paragraph(SheetPoint top_left, const std::string& text, double width_mm, const TextStyle& style);

  double line_height_mm(const TextStyle& style) const { return style.height_mm * 1.35; }
  const TextMeasure& measure() const { return *measure_; }
  Drawing take() { return std::move(drawing_); }

 private:
  const TextMeasure* measure_;
  Drawing drawing_;
};

}  // namespace yardwright
