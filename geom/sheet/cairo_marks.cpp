#include "geom/sheet/cairo_marks.hpp"

#include <cairo.h>

#include <numbers>

namespace yardwright::cairo {

namespace {

constexpr double x_height_ratio = 0.364;  ///< half of Inter's capital height (0.727 em): the middle of a line of words
constexpr double halo_ratio = 0.34;       ///< of the letters' height

/// Puts marks of one drawing at their places on the paper.
class Painter {
 public:
  Painter(cairo_t* context, Placement placement, bool y_up, Letters& letters)
      : context_{context}, placement_{placement}, y_up_{y_up}, letters_{letters} {}

  void operator()(const LineMark& mark) const {
    trace(mark.points, mark.closed);
    stroke(mark.stroke);
  }

  void operator()(const AreaMark& mark) const {
    for (const auto& ring : mark.rings) trace(ring, true);
    cairo_set_fill_rule(context_, CAIRO_FILL_RULE_EVEN_ODD);
    use(mark.fill);
    cairo_fill(context_);
  }

  void operator()(const CircleMark& mark) const {
    const SheetPoint centre = at(mark.centre);
    cairo_new_path(context_);
    cairo_arc(context_, centre.x, centre.y, mark.radius * placement_.per_unit, 0, 2 * std::numbers::pi);
    use(mark.fill);
    cairo_fill_preserve(context_);
    stroke(mark.stroke);
  }

  void operator()(const SymbolMark& mark) const {
    const SheetPoint middle = at(mark.at);
    const Painter inner{context_, {middle.x, middle.y, placement_.per_mm, placement_.per_mm}, false, letters_};
    for (const auto& simple : mark.marks) std::visit(inner, simple);
  }

  void operator()(const TextMark& mark) const;
  void operator()(const PictureMark& mark) const;

 private:
  SheetPoint at(DrawPoint point) const { return on_paper(placement_, y_up_, point); }

  void use(Colour colour) const {
    cairo_set_source_rgba(context_, colour.red / 255.0, colour.green / 255.0, colour.blue / 255.0,
                          colour.alpha / 255.0);
  }

  void trace(const std::vector<DrawPoint>& points, bool closed) const {
    for (std::size_t i = 0; i < points.size(); ++i) {
      const SheetPoint point = at(points[i]);
      if (i == 0)
        cairo_move_to(context_, point.x, point.y);
      else
        cairo_line_to(context_, point.x, point.y);
    }
    if (closed && !points.empty()) cairo_close_path(context_);
  }

  void stroke(const Stroke& stroke) const {
    if (stroke.width_mm <= 0 || stroke.colour.alpha == 0) return cairo_new_path(context_);
    std::vector<double> dash;
    for (const double part_mm : stroke.dash_mm) dash.push_back(part_mm * placement_.per_mm);
    cairo_set_dash(context_, dash.data(), static_cast<int>(dash.size()), 0);
    cairo_set_line_width(context_, stroke.width_mm * placement_.per_mm);
    cairo_set_line_join(context_, CAIRO_LINE_JOIN_ROUND);
    cairo_set_line_cap(context_, dash.empty() ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_BUTT);
    use(stroke.colour);
    cairo_stroke(context_);
  }

  cairo_t* context_;
  Placement placement_;
  bool y_up_;
  Letters& letters_;
};

double anchored_left(Anchor anchor, double width) {
  switch (anchor) {
    case Anchor::middle: return -width / 2;
    case Anchor::right: return -width;
    case Anchor::left: break;
  }
  return 0;
}

void Painter::operator()(const TextMark& mark) const {
  const std::string shown = printable(mark.text);
  if (shown.empty()) return;
  const double height = mark.height_mm * placement_.per_mm;
  const SheetPoint place = at(mark.at) + SheetVector{mark.offset_mm.x, mark.offset_mm.y} * placement_.per_mm;
  const double left = anchored_left(mark.anchor, text_width_mm(context_, letters_, shown, height, mark.bold));
  const double base = mark.centred ? height * x_height_ratio : 0;
  cairo_save(context_);
  cairo_translate(context_, place.x, place.y);
  cairo_rotate(context_, mark.turn_deg * std::numbers::pi / 180);
  if (mark.halo.alpha > 0) {
    cairo_move_to(context_, left, base);
    cairo_text_path(context_, shown.c_str());
    stroke({mark.halo, mark.height_mm * halo_ratio, {}});
  }
  use(mark.colour);
  cairo_move_to(context_, left, base);
  cairo_show_text(context_, shown.c_str());
  cairo_restore(context_);
}

/// 0xAABBGGRR to Cairo's premultiplied ARGB.
std::uint32_t premultiplied(std::uint32_t pixel) {
  const std::uint32_t alpha = pixel >> 24U;
  const auto part = [&](unsigned shift) { return (((pixel >> shift) & 0xFFU) * alpha + 127) / 255; };
  return (alpha << 24U) | (part(0) << 16U) | (part(8) << 8U) | part(16);
}

void Painter::operator()(const PictureMark& mark) const {
  if (mark.pixels.empty()) return;
  const int wide = mark.pixels.width_px(), high = mark.pixels.height_px();
  cairo_surface_t* picture = cairo_image_surface_create(CAIRO_FORMAT_ARGB32, wide, high);
  if (cairo_surface_status(picture) == CAIRO_STATUS_SUCCESS) {
    const auto stride = static_cast<std::size_t>(cairo_image_surface_get_stride(picture)) / sizeof(std::uint32_t);
    auto* target = reinterpret_cast<std::uint32_t*>(cairo_image_surface_get_data(picture));
    for (int row = 0; row < high; ++row) {
      std::uint32_t* in_row = target + static_cast<std::size_t>(row) * stride;
      for (int column = 0; column < wide; ++column) in_row[column] = premultiplied(mark.pixels.at(column, row));
    }
    cairo_surface_mark_dirty(picture);
    const SheetPoint corner = at(mark.corner);
    const SheetVector right = (at(mark.corner + mark.right) - corner) * (1.0 / wide);
    const SheetVector down = (at(mark.corner + mark.down) - corner) * (1.0 / high);
    const cairo_matrix_t matrix{right.x, right.y, down.x, down.y, corner.x, corner.y};
    cairo_save(context_);
    cairo_transform(context_, &matrix);
    cairo_set_source_surface(context_, picture, 0, 0);
    cairo_paint_with_alpha(context_, mark.strength);
    cairo_restore(context_);
  }
  cairo_surface_destroy(picture);
}

}  // namespace

void draw(cairo_t* context, const Drawing& drawing, const Placement& placement, Letters& letters) {
  const Painter painter{context, placement, drawing.y_up, letters};
  for (const Mark& mark : drawing.marks) {
    cairo_new_path(context);
    std::visit(painter, mark);
  }
}

}  // namespace yardwright::cairo
