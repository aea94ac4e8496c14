// A storm's water inside the tunnels and culverts of a yard, as levels along them. The storm keeps the levels of pits and
// the flow of culverts; what stands between is told from them. In a tunnel the water lies straight between those of its two
// pits, no lower than its sill. In a culvert it runs as deep as Manning's formula asks for its flow, and no lower than what
// stands at its lower end. docs/methods/storm.md
#pragma once

#include <limits>
#include <vector>

#include "geom/drain/storm/storm.hpp"

namespace yardwright::drain::storm {

struct PipeWater {
  ItemId item;
  SitePath path;
  double start_m = 0, end_m = 0;                              ///< levels at its two ends, straight between them
  double standing_m = std::numeric_limits<double>::lowest();  ///< level that backs up from the lower end

  /// At the nearest place of its path.
  double level_m(SitePoint at) const;
};

/// Of the wet ones. `site` is what the storm ran on, `ground` its design surface; `frame` may be null, where nothing is known
/// of the water on the ground.
std::vector<PipeWater> pipe_water_at(const Site& site, const LevelGrid& ground, const StormStory& story,
                                     const StormFrame* frame, double time_s);
/// At the highest of every part.
std::vector<PipeWater> highest_pipe_water(const Site& site, const LevelGrid& ground, const StormStory& story);

}  // namespace yardwright::drain::storm
