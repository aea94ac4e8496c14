#include "geom/sheet/section_water_marks.hpp"

#include <algorithm>

namespace yardwright {

namespace {

using drain::storm::WaterLevels;

struct Shore {
  double chainage_m = 0, bed_m = 0;
};

/// Where a level met the ground on the way from a wet point to a dry one; the dry one where it lies lower.
Shore shore_towards(const SectionPoint& wet, const SectionPoint& dry, double level_m) {
  const double bed_m = wet.levels->design_m;
  if (!dry.levels) return {wet.chainage_m, bed_m};
  const double rise_m = dry.levels->design_m - bed_m;
  if (dry.levels->design_m <= level_m) return {dry.chainage_m, dry.levels->design_m};
  const double share = (level_m - bed_m) / rise_m;
  return {wet.chainage_m + share * (dry.chainage_m - wet.chainage_m), level_m};
}

bool is_wet(const GroundSection& ground, const WaterLevels& levels, std::size_t i) {
  return levels[i] && ground.points[i].levels && *levels[i] > ground.points[i].levels->design_m;
}

void add(WaterBody& body, const Shore& shore, double level_m) {
  body.top.push_back({shore.chainage_m, level_m});
  body.bed.push_back({shore.chainage_m, shore.bed_m});
}

WaterBody body_of(const GroundSection& ground, const WaterLevels& levels, std::size_t first, std::size_t last) {
  const auto& points = ground.points;
  WaterBody body;
  if (first > 0) add(body, shore_towards(points[first], points[first - 1], *levels[first]), *levels[first]);
  for (std::size_t i = first; i <= last; ++i) add(body, {points[i].chainage_m, points[i].levels->design_m}, *levels[i]);
  if (last + 1 < points.size()) add(body, shore_towards(points[last], points[last + 1], *levels[last]), *levels[last]);
  return body;
}

bool is_full(const SectionView& view, const LineCrossing& crossing) {
  constexpr double nearly_m = 0.01;
  return std::ranges::any_of(view.pits, [&](const drain::storm::PitWater& pit) {
    return pit.item == crossing.item && pit.level_m > crossing.at_from->top_m - nearly_m;
  });
}

/// Between the last wet point before a hole and the first one after it, where both are at it.
void bridge(const GroundSection& ground, const LineCrossing& hole, WaterLevels& levels) {
  const auto& points = ground.points;
  for (std::size_t i = 1; i < levels.size(); ++i) {
    if (levels[i] || !levels[i - 1] || points[i].chainage_m > hole.to_m) continue;
    std::size_t after = i;
    while (after < levels.size() && !levels[after]) ++after;
    if (after == levels.size() || points[after].chainage_m < hole.from_m) continue;
    const double gap_m = points[after].chainage_m - points[i - 1].chainage_m, hole_m = hole.to_m - hole.from_m;
    if (gap_m > 2 * hole_m + 4 * (points[i].chainage_m - points[i - 1].chainage_m)) continue;
    const double level_m = std::min(*levels[i - 1], *levels[after]);
    std::fill(levels.begin() + static_cast<std::ptrdiff_t>(i), levels.begin() + static_cast<std::ptrdiff_t>(after),
              std::optional{level_m});
  }
}

}  // namespace

std::vector<WaterBody> water_bodies(const GroundSection& ground, const WaterLevels& levels) {
  std::vector<WaterBody> bodies;
  if (levels.size() != ground.points.size()) return bodies;
  for (std::size_t i = 0; i < levels.size(); ++i) {
    if (!is_wet(ground, levels, i)) continue;
    std::size_t last = i;
    while (last + 1 < levels.size() && is_wet(ground, levels, last + 1)) ++last;
    bodies.push_back(body_of(ground, levels, i, last));
    i = last;
  }
  return bodies;
}

WaterLevels over_full_pits(const SectionView& view, WaterLevels levels) {
  if (levels.size() != view.ground.points.size()) return levels;
  for (const LineCrossing& crossing : view.crossings) {
    if (crossing.is_below && crossing.at_from && is_full(view, crossing)) bridge(view.ground, crossing, levels);
  }
  return levels;
}

}  // namespace yardwright
