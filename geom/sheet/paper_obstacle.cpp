#include "geom/sheet/paper_obstacle.hpp"

#include <algorithm>

namespace yardwright {

PaperObstacle on_paper(const Obstacle& obstacle, double metres_per_mm) {
  PaperObstacle paper{{}, {}, 0, obstacle.weight, obstacle.solid, obstacle.owner};
  if (const Disc* disc = std::get_if<Disc>(&obstacle.shape)) {
    paper.middle = on_paper(disc->centre, metres_per_mm);
    paper.radius_mm = disc->radius_m / metres_per_mm + obstacle.margin_mm;
    return paper;
  }
  const SitePath& path = std::get<SitePath>(obstacle.shape);
  for (const SitePoint point : path) paper.line.push_back(on_paper(point, metres_per_mm));
  if (obstacle.solid && !path.empty()) paper.line.push_back(paper.line.front());
  const Box box = box_of(path);
  paper.middle = on_paper(between(box.low, box.high, 0.5), metres_per_mm);
  paper.radius_mm = distance(box.low, box.high) / 2 / metres_per_mm;
  return paper;
}

bool is_near(const LabelBox& box, const PaperObstacle& obstacle) {
  return length(box.middle - obstacle.middle) <= box.reach_mm() + obstacle.radius_mm;
}

bool crosses_edge(const LabelBox& box, const PaperObstacle& obstacle) {
  if (obstacle.line.empty()) {
    const auto corners = box.corners();
    const bool all_inside =
        std::ranges::all_of(corners, [&](PaperPoint p) { return distance(p, obstacle.middle) < obstacle.radius_mm; });
    return !all_inside && distance_to(box, obstacle.middle) < obstacle.radius_mm;
  }
  for (std::size_t i = 1; i < obstacle.line.size(); ++i) {
    if (crosses(box, obstacle.line[i - 1], obstacle.line[i])) return true;
  }
  return false;
}

bool lies_in(const LabelBox& box, const PaperObstacle& obstacle) {
  if (obstacle.line.empty()) return distance(box.middle, obstacle.middle) < obstacle.radius_mm;
  return contains(obstacle.line, box.middle);
}

}  // namespace yardwright
