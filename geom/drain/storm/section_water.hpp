// A storm's water on a section of the ground: its level at the section's points, and in the pits. The level is that of the
// wet cells around a point, over the ground that the storm ran on. docs/methods/storm.md
#pragma once

#include <optional>
#include <vector>

#include "geom/drain/storm/storm.hpp"
#include "geom/ground/ground_section.hpp"

namespace yardwright::drain::storm {

inline constexpr double film_m = 0.005;  ///< less water is wet ground

/// At every point of the section; nothing where it is dry.
using WaterLevels = std::vector<std::optional<double>>;

/// `ground` is what the storm ran on; its frame is that of the depths.
WaterLevels deepest_water(const GroundSection& section, const LevelGrid& ground, const StormStory& story);
WaterLevels water_of(const GroundSection& section, const LevelGrid& ground, const StormFrame& frame);

struct PitWater {
  ItemId item;
  double level_m = 0;
};

/// In every pit with water over its floor, at a moment between two samples or at an end.
std::vector<PitWater> pit_water_at(const StormStory& story, double time_s);
std::vector<PitWater> highest_pit_water(const StormStory& story);

}  // namespace yardwright::drain::storm
