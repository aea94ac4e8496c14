#include "geom/drain/storm/section_water.hpp"

#include <algorithm>
#include <cmath>

namespace yardwright::drain::storm {

namespace {

/// The level of the wet ones of the four cells around a point, weighted as in bilinear interpolation; dry where the dry
/// ones weigh more.
template <class DepthOf>
std::optional<double> level_around(const LevelGrid& ground, SitePoint at, DepthOf depth_of) {
  const GridFrame& frame = ground.frame();
  const double x = (at.x - frame.south_west.x) / frame.cell_m - 0.5,
               y = (at.y - frame.south_west.y) / frame.cell_m - 0.5;
  const double left = std::floor(x), low = std::floor(y);
  double wet = 0, level_m = 0;
  for (const double column : {left, left + 1}) {
    for (const double row : {low, low + 1}) {
      const CellIndex cell{static_cast<int>(std::clamp(column, 0.0, frame.columns - 1.0)),
                           static_cast<int>(std::clamp(row, 0.0, frame.rows - 1.0))};
      const double depth_m = depth_of(frame.offset(cell)), share = (1 - std::abs(x - column)) * (1 - std::abs(y - row));
      if (depth_m < film_m) continue;
      wet += share;
      level_m += share * (static_cast<double>(ground.at(cell)) + depth_m);
    }
  }
  if (wet < 0.5) return std::nullopt;
  return level_m / wet;
}

template <class DepthOf>
WaterLevels levels_along(const GroundSection& section, const LevelGrid& ground, DepthOf depth_of) {
  WaterLevels levels;
  for (const SectionPoint& point : section.points)
    levels.push_back(point.levels ? level_around(ground, point.at, depth_of) : std::nullopt);
  return levels;
}

void add(std::vector<PitWater>& water, const PitStory& pit, double level_m) {
  if (level_m - pit.floor_m > film_m) water.push_back({pit.item, level_m});
}

double level_at(const PitStory& pit, double time_s) {
  const auto after = std::ranges::lower_bound(pit.samples, time_s, {}, &PitSample::time_s);
  if (after == pit.samples.begin()) return after->level_m;
  if (after == pit.samples.end()) return pit.samples.back().level_m;
  const PitSample &from = *(after - 1), &to = *after;
  return std::lerp(from.level_m, to.level_m, (time_s - from.time_s) / (to.time_s - from.time_s));
}

}  // namespace

WaterLevels deepest_water(const GroundSection& section, const LevelGrid& ground, const StormStory& story) {
  const auto& depths = story.deepest_m.values();
  if (depths.size() != ground.values().size()) return WaterLevels(section.points.size());
  return levels_along(section, ground, [&](std::size_t cell) { return static_cast<double>(depths[cell]); });
}

WaterLevels water_of(const GroundSection& section, const LevelGrid& ground, const StormFrame& frame) {
  if (frame.depth_mm.size() != ground.values().size()) return WaterLevels(section.points.size());
  return levels_along(section, ground, [&](std::size_t cell) { return frame.depth_mm[cell] / 1000.0; });
}

std::vector<PitWater> pit_water_at(const StormStory& story, double time_s) {
  std::vector<PitWater> water;
  for (const PitStory& pit : story.pits)
    if (!pit.samples.empty()) add(water, pit, level_at(pit, time_s));
  return water;
}

std::vector<PitWater> highest_pit_water(const StormStory& story) {
  std::vector<PitWater> water;
  for (const PitStory& pit : story.pits) add(water, pit, pit.highest_m);
  return water;
}

}  // namespace yardwright::drain::storm
