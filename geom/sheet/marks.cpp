#include "geom/sheet/marks.hpp"

#include <numbers>

#include "geom/shape/path.hpp"

namespace yardwright {

namespace {

/// On the paper, where y goes down.
DrawVector on_paper(SiteVector direction) { return {direction.x, -direction.y}; }
DrawPoint from_origin(DrawVector v) { return {v.x, v.y}; }

LineMark faded_line(LineMark mark, double part) {
  mark.stroke.colour = mark.stroke.colour.faded(part);
  return mark;
}

void fade(LineMark& mark, double part) { mark = faded_line(std::move(mark), part); }
void fade(AreaMark& mark, double part) { mark.fill = mark.fill.faded(part); }
void fade(CircleMark& mark, double part) {
  mark.fill = mark.fill.faded(part);
  mark.stroke.colour = mark.stroke.colour.faded(part);
}
void fade(TextMark& mark, double part) { mark.colour = mark.colour.faded(part); }
void fade(PictureMark& mark, double part) { mark.strength *= part; }
void fade(SymbolMark& mark, double part) {
  for (auto& inner : mark.marks) std::visit([&](auto& simple) { fade(simple, part); }, inner);
}

}  // namespace

std::vector<DrawPoint> on_plan(const SitePath& path) {
  std::vector<DrawPoint> points;
  points.reserve(path.size());
  for (const SitePoint point : path) points.push_back(on_plan(point));
  return points;
}

LineMark line(const SitePath& path, Stroke stroke) { return {on_plan(path), std::move(stroke), false}; }

LineMark ring(const SitePath& corners, Stroke stroke) { return {on_plan(corners), std::move(stroke), true}; }

AreaMark area(const SitePath& corners, Colour fill) { return {{on_plan(corners)}, fill}; }

void add_polygon(Marks& marks, const Polygon& polygon, Colour fill, const Stroke& edge) {
  AreaMark filled = area(polygon.outer, fill);
  for (const auto& hole : polygon.holes) filled.rings.push_back(on_plan(hole));
  if (fill.alpha > 0) marks.push_back(filled);
  if (edge.width_mm <= 0) return;
  for (auto& corners : filled.rings) marks.push_back(LineMark{std::move(corners), edge, true});
}

void add_region(Marks& marks, const Region& region, Colour fill, const Stroke& edge) {
  for (const Polygon& polygon : region) add_polygon(marks, polygon, fill, edge);
}

CircleMark circle(SitePoint centre, double radius_m, Colour fill, Stroke edge) {
  return {on_plan(centre), radius_m, fill, std::move(edge)};
}

Region strip_of(const SitePath& path, double width_m) { return length(path) > 0 ? strip(path, width_m) : Region{}; }

SymbolMark arrowhead(SitePoint at, SiteVector direction, double size_mm, Stroke stroke) {
  const DrawVector ahead = on_paper(unit(direction));
  const DrawVector aside{-ahead.y, ahead.x};
  const DrawPoint left = from_origin(ahead * -size_mm + aside * (size_mm * 0.55));
  const DrawPoint right = from_origin(ahead * -size_mm - aside * (size_mm * 0.55));
  return {on_plan(at), {LineMark{{left, {0, 0}, right}, std::move(stroke), false}}};
}

SymbolMark slanted_tick(SitePoint at, SiteVector direction, double size_mm, Stroke stroke) {
  const DrawVector ahead = on_paper(unit(direction));
  const DrawVector slant = unit(ahead + DrawVector{ahead.y, -ahead.x}) * (size_mm / 2);
  return {on_plan(at), {LineMark{{from_origin(-slant), from_origin(slant)}, std::move(stroke), false}}};
}

SymbolMark spot(SitePoint at, double radius_mm, Colour fill, Stroke stroke) {
  return {on_plan(at), {CircleMark{{0, 0}, radius_mm, fill, std::move(stroke)}}};
}

TextMark words(SitePoint at, std::string text, double height_mm, Colour colour, Anchor anchor) {
  TextMark mark;
  mark.at = on_plan(at);
  mark.text = std::move(text);
  mark.height_mm = height_mm;
  mark.colour = colour;
  mark.anchor = anchor;
  mark.halo = palette::paper.faded(0.85);
  return mark;
}

double turn_along_deg(SiteVector direction) {
  double turn_deg = -std::atan2(direction.y, direction.x) * 180 / std::numbers::pi;
  if (turn_deg > 90) turn_deg -= 180;
  if (turn_deg <= -90) turn_deg += 180;
  return turn_deg;
}

Mark faded(Mark mark, double part) {
  std::visit([&](auto& kind) { fade(kind, part); }, mark);
  return mark;
}

}  // namespace yardwright
