// What words and arrows of a plan keep off, on the paper. Paper millimetres, right and down from the site's origin.
#pragma once

#include "geom/sheet/label.hpp"
#include "geom/sheet/label_box.hpp"

namespace yardwright {

/// With a circle about it that tells most of them away quickly.
struct PaperObstacle {
  std::vector<PaperPoint> line;  ///< empty for a disc
  PaperPoint middle;
  double radius_mm = 0;
  double weight = 0;
  bool solid = false;
  ItemId owner;
};

PaperObstacle on_paper(const Obstacle& obstacle, double metres_per_mm);

/// False where they are too far apart to meet.
bool is_near(const LabelBox& box, const PaperObstacle& obstacle);
bool crosses_edge(const LabelBox& box, const PaperObstacle& obstacle);
/// Whether the middle of the box does.
bool lies_in(const LabelBox& box, const PaperObstacle& obstacle);

}  // namespace yardwright
