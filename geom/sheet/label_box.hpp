// A label's box on the paper, turned as its words are, and what it meets. Paper millimetres, right and down from the
// site's origin.
#pragma once

#include <array>
#include <vector>

#include "geom/sheet/drawing.hpp"

namespace yardwright {

using PaperPoint = DrawPoint;

inline PaperPoint on_paper(SitePoint at, double metres_per_mm) { return {at.x / metres_per_mm, -at.y / metres_per_mm}; }

struct LabelBox {
  PaperPoint middle;
  DrawVector along, across;  ///< half sides

  std::array<PaperPoint, 4> corners() const {
    return {middle - along - across, middle + along - across, middle + along + across, middle - along + across};
  }
  double reach_mm() const { return std::hypot(length(along), length(across)); }
};

LabelBox label_box(PaperPoint middle, double width_mm, double height_mm, double turn_deg);

/// Whether two boxes overlap or stand closer than a hair.
bool meet(const LabelBox& a, const LabelBox& b);
/// Whether a segment passes through the box.
bool crosses(const LabelBox& box, PaperPoint from, PaperPoint to);
double distance_to(const LabelBox& box, PaperPoint point);
/// The point of the box's edge where a line from outside to its middle enters it.
PaperPoint entry_of(const LabelBox& box, PaperPoint from);
/// By the even-odd rule.
bool contains(const std::vector<PaperPoint>& ring, PaperPoint point);

}  // namespace yardwright
