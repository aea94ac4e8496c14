#include "geom/sheet/section_water_marks.hpp"

#include <algorithm>
#include <cmath>

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

SitePoint place_at(const GroundSection& ground, double chainage_m) {
  const auto& points = ground.points;
  const auto after = std::ranges::lower_bound(points, chainage_m, {}, &SectionPoint::chainage_m);
  if (after == points.begin()) return points.front().at;
  if (after == points.end()) return points.back().at;
  const auto before = after - 1;
  return between(before->at, after->at, (chainage_m - before->chainage_m) / (after->chainage_m - before->chainage_m));
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

std::vector<WaterPoint> water_below(const SectionView& view, const LineCrossing& crossing) {
  constexpr int pieces = 24;
  const auto pit = std::ranges::find(view.pits, crossing.item, &drain::storm::PitWater::item);
  const auto pipe = std::ranges::find(view.pipes, crossing.item, &drain::storm::PipeWater::item);
  const bool is_of_pit = crossing.is_pit && pit != view.pits.end();
  if (!crossing.is_below || !crossing.at_from || (!is_of_pit && (crossing.is_pit || pipe == view.pipes.end())))
    return {};
  std::vector<WaterPoint> points;
  double deepest_m = 0;
  for (int i = 0; i <= pieces; ++i) {
    const double share = static_cast<double>(i) / pieces;
    const double chainage_m = std::lerp(crossing.from_m, crossing.to_m, share);
    const double bed_m = std::lerp(crossing.at_from->base_m, crossing.at_to->base_m, share),
                 top_m = std::lerp(crossing.at_from->top_m, crossing.at_to->top_m, share);
    const double level_m = is_of_pit ? pit->level_m : pipe->level_m(place_at(view.ground, chainage_m));
    points.push_back({chainage_m, bed_m, std::clamp(level_m, bed_m, top_m)});
    deepest_m = std::max(deepest_m, points.back().level_m - bed_m);
  }
  return deepest_m > 0 ? points : std::vector<WaterPoint>{};
}

WaterLevels over_full_pits(const SectionView& view, WaterLevels levels) {
  if (levels.size() != view.ground.points.size()) return levels;
  for (const LineCrossing& crossing : view.crossings) {
    if (crossing.is_below && crossing.at_from && is_full(view, crossing)) bridge(view.ground, crossing, levels);
  }
  return levels;
}

}  // namespace yardwright
