#include "geom/turn/grade.hpp"

#include <algorithm>
#include <cmath>

#include "geom/shape/path.hpp"

namespace yardwright::turn {

namespace {

constexpr double step_m = 1.0;

/// Points every `step_m` along a line, its end included.
SitePath every_metre(const SitePath& line) {
  const double length_m = length(line);
  SitePath points;
  for (double at_m = 0; at_m < length_m; at_m += step_m) points.push_back(pose_at(line, at_m).at);
  points.push_back(pose_at(line, length_m).at);
  return points;
}

/// Calls `use(Steepest)` for every stretch, in their order.
template <class Use>
void for_each_stretch(const SitePath& line, const DesignSurface& surface, double over_m, Use use) {
  const SitePath points = every_metre(line);
  const auto window = std::clamp<std::size_t>(static_cast<std::size_t>(std::lround(over_m / step_m)), 1,
                                              std::max<std::size_t>(points.size(), 2) - 1);
  for (std::size_t i = 0; i + window < points.size(); ++i) {
    double run_m = 0;
    for (std::size_t k = i; k < i + window; ++k) run_m += distance(points[k], points[k + 1]);
    const double rise_m = surface.level_m(points[i + window]) - surface.level_m(points[i]);
    if (run_m > 0) use(Steepest{std::abs(rise_m / run_m), points[i + window / 2]});
  }
}

}  // namespace

Steepest steepest_grade(const SitePath& line, const DesignSurface& surface, double over_m) {
  Steepest steepest;
  for_each_stretch(line, surface, over_m, [&](const Steepest& here) {
    if (here.grade_ratio >= steepest.grade_ratio) steepest = here;
  });
  return steepest;
}

SitePath steeper_places(const SitePath& line, const DesignSurface& surface, double over_m, double ratio) {
  SitePath places;
  for_each_stretch(line, surface, over_m, [&](const Steepest& here) {
    if (here.grade_ratio > ratio) places.push_back(here.at);
  });
  return places;
}

}  // namespace yardwright::turn
