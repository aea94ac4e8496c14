#include "editor/canvas/device.hpp"

#include <algorithm>
#include <cmath>

#include "editor/canvas/picture_cache.hpp"
#include "editor/canvas/screen_line.hpp"
#include "editor/canvas/triangles.hpp"

namespace yardwright::canvas {

namespace {

using look::packed;

struct Pen {
  const Placement& placement;
  const look::Look& look;
  ImDrawList& list;
  bool y_up;

  ImVec2 at(DrawPoint point) const { return on_screen(point, placement, y_up); }
  ScreenBox seen() const { return {list.GetClipRectMin(), list.GetClipRectMax()}; }
  float width(const Stroke& stroke) const {
    const auto whole = std::max(1.0F, static_cast<float>(stroke.width_mm * placement.per_mm));
    // Dear ImGui draws thin lines of whole pixels with a third of the triangles.
    return whole < 2.5F ? std::round(whole) : whole;
  }
};

std::vector<ImVec2> on_screen(const std::vector<DrawPoint>& points, const Pen& pen) {
  std::vector<ImVec2> screen;
  screen.reserve(points.size());
  for (const DrawPoint point : points) screen.push_back(pen.at(point));
  return screen;
}

/// Walks a polyline and draws the dashes that are on.
class Dasher {
 public:
  Dasher(const Stroke& stroke, const Pen& pen) : pen_{pen}, colour_{packed(stroke.colour)}, width_{pen.width(stroke)} {
    for (const double mm : stroke.dash_mm)
      lengths_.push_back(std::max(0.5F, static_cast<float>(mm * pen.placement.per_mm)));
    if (lengths_.size() % 2 != 0) lengths_.insert(lengths_.end(), lengths_.begin(), lengths_.end());
    left_ = lengths_.front();
  }

  void segment(ImVec2 from, ImVec2 to) {
    const float dx = to.x - from.x, dy = to.y - from.y, length = std::hypot(dx, dy);
    if (length <= 0 || length > 2e5F) return;
    for (float done = 0; done < length;) {
      const float part = std::min(left_, length - done);
      if (which_ % 2 == 0) {
        const float a = done / length, b = (done + part) / length;
        pen_.list.AddLine({from.x + dx * a, from.y + dy * a}, {from.x + dx * b, from.y + dy * b}, colour_, width_);
      }
      done += part;
      left_ -= part;
      if (left_ <= 1e-4F) next();
    }
  }

 private:
  void next() {
    which_ = (which_ + 1) % lengths_.size();
    left_ = lengths_[which_];
  }
  const Pen& pen_;
  ImU32 colour_;
  float width_;
  std::vector<float> lengths_;
  std::size_t which_ = 0;
  float left_ = 0;
};

void stroke(std::vector<ImVec2> points, bool closed, const Stroke& stroke, const Pen& pen) {
  if (points.size() < 2 || stroke.width_mm <= 0 || stroke.colour.alpha == 0) return;
  if (stroke.dash_mm.empty()) {
    for (const ScreenLine& part : seen_parts({std::move(points), closed}, pen.seen(), pen.width(stroke)))
      pen.list.AddPolyline(part.points.data(), static_cast<int>(part.points.size()), packed(stroke.colour),
                           part.closed ? ImDrawFlags_Closed : ImDrawFlags_None, pen.width(stroke));
    return;
  }
  if (closed) points.push_back(points.front());
  Dasher dasher{stroke, pen};
  for (std::size_t i = 0; i + 1 < points.size(); ++i) dasher.segment(points[i], points[i + 1]);
}

void fill(const std::vector<ImVec2>& points, Colour colour, const Pen& pen) {
  if (points.size() < 3 || colour.alpha == 0) return;
  pen.list.AddConvexPolyFilled(points.data(), static_cast<int>(points.size()), packed(colour));
}

/// Triangles side by side would show seams where each is smoothed at its edge.
void fill_triangles(const std::vector<Triangle>& triangles, Colour colour, const Pen& pen) {
  const ImDrawListFlags before = pen.list.Flags;
  pen.list.Flags &= ~ImDrawListFlags_AntiAliasedFill;
  for (const auto& [a, b, c] : triangles) pen.list.AddTriangleFilled(pen.at(a), pen.at(b), pen.at(c), packed(colour));
  pen.list.Flags = before;
}

std::vector<ImVec2> circle_points(ImVec2 centre, float radius) {
  const int count = std::clamp(static_cast<int>(radius), 12, 96);
  std::vector<ImVec2> points;
  for (int i = 0; i < count; ++i) {
    const float turn = 2 * 3.14159265F * static_cast<float>(i) / static_cast<float>(count);
    points.push_back({centre.x + radius * std::cos(turn), centre.y + radius * std::sin(turn)});
  }
  return points;
}

struct Drawer {
  const Pen& pen;

  void operator()(const LineMark& mark) const { stroke(on_screen(mark.points, pen), mark.closed, mark.stroke, pen); }

  void operator()(const AreaMark& mark) const {
    if (mark.fill.alpha == 0) return;
    if (mark.rings.size() == 1 && is_convex(mark.rings.front()))
      fill(on_screen(mark.rings.front(), pen), mark.fill, pen);
    else
      fill_triangles(triangles_of(mark.rings), mark.fill, pen);
  }

  void operator()(const CircleMark& mark) const {
    const auto points = circle_points(pen.at(mark.centre), static_cast<float>(mark.radius * pen.placement.per_unit));
    fill(points, mark.fill, pen);
    stroke(points, true, mark.stroke, pen);
  }

  void operator()(const TextMark& mark) const {
    ImVec2 at = pen.at(mark.at);
    at.x += static_cast<float>(mark.offset_mm.x * pen.placement.per_mm);
    at.y += static_cast<float>(mark.offset_mm.y * pen.placement.per_mm);
    draw_words(mark, at, static_cast<float>(mark.height_mm * pen.placement.per_mm), pen.look, pen.list);
  }

  void operator()(const SymbolMark& mark) const {
    const ImVec2 at = pen.at(mark.at);
    const Placement placement{at.x, at.y, pen.placement.per_mm, pen.placement.per_mm};
    const Pen symbol_pen{placement, pen.look, pen.list, false};
    for (const auto& part : mark.marks) std::visit(Drawer{symbol_pen}, part);
  }

  void operator()(const PictureMark& mark) const {
    const ImTextureID texture = pen.look.pictures->texture_of(mark);
    if (texture == nullptr) return;
    const DrawPoint a = mark.corner, b = a + mark.right, c = b + mark.down, d = a + mark.down;
    const auto strength = static_cast<int>(std::clamp(mark.strength, 0.0, 1.0) * 255);
    pen.list.AddImageQuad(texture, pen.at(a), pen.at(b), pen.at(c), pen.at(d), {0, 0}, {1, 0}, {1, 1}, {0, 1},
                          IM_COL32(255, 255, 255, strength));
  }
};

/// The font cut nearest to a size, so that letters are scaled as little as can be.
ImFont* font_for(const TextMark& words, float size_px, const look::Look& look) {
  if (words.bold) return size_px > look.px(16.5) ? look.letters.title : look.letters.strong;
  return size_px > look.px(13) ? look.letters.plain : look.letters.small;
}

void turn_vertices(ImDrawList& list, int first, ImVec2 pivot, double clockwise_deg) {
  const Angle turn = Angle::degrees(clockwise_deg);
  const auto c = static_cast<float>(cos(turn)), s = static_cast<float>(sin(turn));
  for (int i = first; i < list.VtxBuffer.Size; ++i) {
    ImVec2& p = list.VtxBuffer[i].pos;
    const ImVec2 v{p.x - pivot.x, p.y - pivot.y};
    p = {pivot.x + v.x * c - v.y * s, pivot.y + v.x * s + v.y * c};
  }
}

}  // namespace

ImVec2 on_screen(DrawPoint point, const Placement& placement, bool y_up) {
  return {static_cast<float>(placement.origin_x + point.x * placement.per_unit),
          static_cast<float>(placement.origin_y + (y_up ? -point.y : point.y) * placement.per_unit)};
}

void draw_words(const TextMark& words, ImVec2 at, float size_px, const look::Look& look, ImDrawList& list) {
  if (words.text.empty() || size_px < 4) return;
  ImFont* font = font_for(words, size_px, look);
  const char *begin = words.text.data(), *end = begin + words.text.size();
  const ImVec2 size = font->CalcTextSizeA(size_px, 1e6F, 0, begin, end);
  const float part = words.anchor == Anchor::left ? 0 : words.anchor == Anchor::middle ? 0.5F : 1;
  ImVec2 corner{at.x - size.x * part, at.y - (words.centred ? size.y / 2 : size.y * 0.8F)};
  if (words.turn_deg == 0) corner = {std::round(corner.x), std::round(corner.y)};
  const int first = list.VtxBuffer.Size;
  if (words.halo.alpha > 0) {
    const float reach = std::max(1.5F, size_px / 8);
    for (const ImVec2 side : {ImVec2{1, 1}, ImVec2{1, -1}, ImVec2{-1, 1}, ImVec2{-1, -1}}) {
      list.AddText(font, size_px, {corner.x + side.x * reach * 0.75F, corner.y + side.y * reach * 0.75F},
                   packed(words.halo), begin, end);
    }
  }
  list.AddText(font, size_px, corner, packed(words.colour), begin, end);
  if (words.turn_deg != 0) turn_vertices(list, first, at, words.turn_deg);
}

void draw(const Drawing& drawing, const Placement& placement, const look::Look& look, ImDrawList& list) {
  const Pen pen{placement, look, list, drawing.y_up};
  for (const Mark& mark : drawing.marks) std::visit(Drawer{pen}, mark);
}

}  // namespace yardwright::canvas
