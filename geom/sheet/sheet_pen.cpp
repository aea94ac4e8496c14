#include "geom/sheet/sheet_pen.hpp"

namespace yardwright {

namespace {

DrawPoint in_drawing(SheetPoint point) { return {point.x, point.y}; }

}  // namespace

void SheetPen::line(SheetPoint from, SheetPoint to, const Stroke& stroke) {
  drawing_.marks.push_back(LineMark{{in_drawing(from), in_drawing(to)}, stroke, false});
}

void SheetPen::box(const SheetBox& box, Colour fill, const Stroke& edge) {
  polygon({box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}}, fill, edge);
}

void SheetPen::polygon(const std::vector<SheetPoint>& corners, Colour fill, const Stroke& edge) {
  std::vector<DrawPoint> points;
  for (const SheetPoint corner : corners) points.push_back(in_drawing(corner));
  if (fill.alpha > 0) drawing_.marks.push_back(AreaMark{{points}, fill});
  if (edge.width_mm > 0) drawing_.marks.push_back(LineMark{std::move(points), edge, true});
}

void SheetPen::symbol(SheetPoint at, SymbolMarks marks) {
  drawing_.marks.push_back(SymbolMark{in_drawing(at), std::move(marks)});
}

void SheetPen::words(SheetPoint at, const std::string& text, const TextStyle& style) {
  TextMark mark;
  mark.at = in_drawing(at);
  mark.text = text;
  mark.height_mm = style.height_mm;
  mark.colour = style.colour;
  mark.bold = style.bold;
  mark.anchor = style.anchor;
  drawing_.marks.push_back(std::move(mark));
}

void SheetPen::fitted(SheetPoint at, const std::string& text, double width_mm, TextStyle style) {
  const double needed_mm = measure_->width_mm(text, style.height_mm, style.bold);
  if (needed_mm > width_mm) style.height_mm *= width_mm / needed_mm;
  words(at, text, style);
}

double SheetPen::paragraph(SheetPoint top_left, const std::string& text, double width_mm, const TextStyle& style) {
  double y = top_left.y;
  for (const std::string& row : measure_->wrapped(text, style.height_mm, width_mm, style.bold)) {
    words({top_left.x, y + line_height_mm(style) / 2}, row, style);
    y += line_height_mm(style);
  }
  return y;
}

}  // namespace yardwright
