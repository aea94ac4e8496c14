#include "geom/drain/storm/pipe_water.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

#include "geom/drain/channel.hpp"
#include "geom/drain/storm/section_water.hpp"
#include "geom/shape/path.hpp"

namespace yardwright::drain::storm {

namespace {

/// What the storm says of one state of the yard.
struct Told {
  std::vector<PitWater> pits;
  std::function<double(const PipeStory&)> flow_m3_per_s;
  std::function<double(std::size_t)> depth_m;  ///< of a cell
};

std::optional<double> pit_level(const Told& told, ItemId item) {
  const auto pit = std::ranges::find(told.pits, item, &PitWater::item);
  return pit == told.pits.end() ? std::nullopt : std::optional{pit->level_m};
}

std::optional<PipeWater> water_of(const Tunnel& tunnel, ItemId item, const LevelGrid& ground, const Told& told) {
  if (tunnel.path.size() < 2) return std::nullopt;
  const double sill_m = level_at(ground, tunnel.path.front()) - tunnel.sill_depth_m;
  PipeWater water{item, tunnel.path, std::max(sill_m, pit_level(told, tunnel.from).value_or(sill_m)),
                  std::max(sill_m, pit_level(told, tunnel.to).value_or(sill_m))};
  if (std::max(water.start_m, water.end_m) - sill_m < film_m) return std::nullopt;
  return water;
}

/// Of the water in the lowest of the nine cells at a pipe's end, where the storm has its mouth; none where that is dry.
std::optional<double> level_beside(const LevelGrid& ground, SitePoint at, const Told& told) {
  const GridFrame& frame = ground.frame();
  const CellIndex middle = frame.cell_of(at);
  std::optional<CellIndex> lowest;
  for (int row = middle.row - 1; row <= middle.row + 1; ++row) {
    for (int column = middle.column - 1; column <= middle.column + 1; ++column) {
      const CellIndex cell{column, row};
      if (frame.contains(cell) && (!lowest || ground.at(cell) < ground.at(*lowest))) lowest = cell;
    }
  }
  const double depth_m = lowest ? told.depth_m(frame.offset(*lowest)) : 0;
  if (depth_m < film_m) return std::nullopt;
  return static_cast<double>(ground.at(*lowest)) + depth_m;
}

/// Full where it cannot carry its flow with a free surface.
double depth_of(const Culvert& culvert, double fall_m, double flow_m3_per_s) {
  if (!(flow_m3_per_s > 0)) return 0;
  const UniformFlow flow =
      normal_flow(Pipe{culvert.diameter_m, fall_m / length(culvert.path), culvert.roughness_n}, flow_m3_per_s);
  return flow.state == FlowState::steady ? flow.depth_m : culvert.diameter_m;
}

std::optional<PipeWater> water_of(const Culvert& culvert, ItemId item, const LevelGrid& ground, const StormStory& story,
                                  const Told& told) {
  const auto carried = std::ranges::find(story.culverts, item, &PipeStory::item);
  if (carried == story.culverts.end() || !(length(culvert.path) > 0)) return std::nullopt;
  const double start_m = level_at(ground, culvert.path.front()) - culvert.start_depth_m,
               end_m = level_at(ground, culvert.path.back()) - culvert.end_depth_m;
  const double depth_m = depth_of(culvert, start_m - end_m, told.flow_m3_per_s(*carried));
  PipeWater water{item, culvert.path, start_m + depth_m, end_m + depth_m, end_m + culvert.tailwater_m};
  if (const auto beside_m = level_beside(ground, culvert.path.back(), told))
    water.standing_m = std::max(water.standing_m, *beside_m);
  if (depth_m < film_m && water.standing_m - end_m < film_m) return std::nullopt;
  return water;
}

std::vector<PipeWater> all_water(const Site& site, const LevelGrid& ground, const StormStory& story, const Told& told) {
  std::vector<PipeWater> all;
  for (const Item& item : site.items) {
    std::optional<PipeWater> water;
    if (const Tunnel* tunnel = as<Tunnel>(item)) water = water_of(*tunnel, item.id, ground, told);
    if (const Culvert* culvert = as<Culvert>(item)) water = water_of(*culvert, item.id, ground, story, told);
    if (water) all.push_back(std::move(*water));
  }
  return all;
}

double flow_at(const StormStory& story, const PipeStory& pipe, double time_s) {
  const auto known = std::min(pipe.flow_m3_per_s.size(), story.times_s.size());
  if (known == 0) return 0;
  const auto after = static_cast<std::size_t>(
      std::ranges::lower_bound(story.times_s.begin(), story.times_s.begin() + static_cast<std::ptrdiff_t>(known),
                               time_s) -
      story.times_s.begin());
  if (after == 0) return pipe.flow_m3_per_s.front();
  if (after == known) return pipe.flow_m3_per_s[known - 1];
  const double from_s = story.times_s[after - 1];
  return std::lerp(pipe.flow_m3_per_s[after - 1], pipe.flow_m3_per_s[after],
                   (time_s - from_s) / (story.times_s[after] - from_s));
}

}  // namespace

double PipeWater::level_m(SitePoint at) const {
  return std::max(standing_m, std::lerp(start_m, end_m, nearest_on_path(path, at).station_m / length(path)));
}

std::vector<PipeWater> pipe_water_at(const Site& site, const LevelGrid& ground, const StormStory& story,
                                     const StormFrame* frame, double time_s) {
  if (ground.empty()) return {};
  const bool known = frame != nullptr && frame->depth_mm.size() == ground.values().size();
  return all_water(site, ground, story,
                   {pit_water_at(story, time_s), [&](const PipeStory& pipe) { return flow_at(story, pipe, time_s); },
                    [&](std::size_t cell) { return known ? frame->depth_mm[cell] / 1000.0 : 0.0; }});
}

std::vector<PipeWater> highest_pipe_water(const Site& site, const LevelGrid& ground, const StormStory& story) {
  if (ground.empty()) return {};
  const auto& depths = story.deepest_m.values();
  const bool known = depths.size() == ground.values().size();
  return all_water(site, ground, story,
                   {highest_pit_water(story), [](const PipeStory& pipe) { return pipe.highest_m3_per_s; },
                    [&](std::size_t cell) { return known ? static_cast<double>(depths[cell]) : 0.0; }});
}

}  // namespace yardwright::drain::storm
