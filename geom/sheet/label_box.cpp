#include "geom/sheet/label_box.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace yardwright {

namespace {

constexpr double between_labels_mm = 0.35;

/// Whether the two stay apart along the sides of the first.
bool apart_by_sides_of(const LabelBox& box, const LabelBox& other) {
  const DrawVector between = other.middle - box.middle;
  for (const DrawVector& side : {box.along, box.across}) {
    const double half = length(side);
    const DrawVector way = unit(side);
    const double reach = half + std::abs(dot(other.along, way)) + std::abs(dot(other.across, way)) + between_labels_mm;
    if (std::abs(dot(between, way)) > reach) return true;
  }
  return false;
}

/// A point in the box's own axes, whose sides are then ±1.
DrawVector in_axes(const LabelBox& box, PaperPoint point) {
  const DrawVector v = point - box.middle;
  return {dot(v, box.along) / dot(box.along, box.along), dot(v, box.across) / dot(box.across, box.across)};
}

}  // namespace

LabelBox label_box(PaperPoint middle, double width_mm, double height_mm, double turn_deg) {
  const double turn = turn_deg * std::numbers::pi / 180;
  return {middle, DrawVector{std::cos(turn), std::sin(turn)} * (width_mm / 2),
          DrawVector{-std::sin(turn), std::cos(turn)} * (height_mm / 2)};
}

bool meet(const LabelBox& a, const LabelBox& b) {
  if (length(a.middle - b.middle) > a.reach_mm() + b.reach_mm() + between_labels_mm) return false;
  return !apart_by_sides_of(a, b) && !apart_by_sides_of(b, a);
}

bool crosses(const LabelBox& box, PaperPoint from, PaperPoint to) {
  const DrawVector a = in_axes(box, from), b = in_axes(box, to);
  double enter = 0, leave = 1;
  for (const auto& [start, end] : {std::pair{a.x, b.x}, std::pair{a.y, b.y}}) {
    const double step = end - start;
    if (std::abs(step) < 1e-12) {
      if (std::abs(start) > 1) return false;
      continue;
    }
    const double first = (-1 - start) / step, second = (1 - start) / step;
    enter = std::max(enter, std::min(first, second));
    leave = std::min(leave, std::max(first, second));
  }
  return enter <= leave;
}

double distance_to(const LabelBox& box, PaperPoint point) {
  const DrawVector v = in_axes(box, point);
  const DrawVector beyond{std::max(0.0, std::abs(v.x) - 1) * length(box.along),
                          std::max(0.0, std::abs(v.y) - 1) * length(box.across)};
  return length(beyond);
}

bool contains(const std::vector<PaperPoint>& ring, PaperPoint point) {
  bool inside = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
    const bool between = (ring[i].y > point.y) != (ring[j].y > point.y);
    if (between && point.x < (ring[j].x - ring[i].x) * (point.y - ring[i].y) / (ring[j].y - ring[i].y) + ring[i].x)
      inside = !inside;
  }
  return inside;
}

PaperPoint entry_of(const LabelBox& box, PaperPoint from) {
  const DrawVector v = in_axes(box, from);
  const double farthest = std::max({std::abs(v.x), std::abs(v.y), 1.0});
  return box.middle + (from - box.middle) * (1 / farthest);
}

}  // namespace yardwright
