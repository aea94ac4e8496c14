// The water of a storm at one place: how deep it stands and where it runs at a moment, and the most of both.
// Page: docs/methods/storm.md
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geom/drain/storm/storm.hpp"

namespace yardwright::drain::storm {

struct WaterHere {
  double time_s = 0;
  double depth_m = 0;
  SiteVector velocity_m_per_s;
  double deepest_m = 0;        ///< at the samples
  double fastest_m_per_s = 0;  ///< of the frames
  double fastest_at_s = 0;
};

/// Of the cell that holds the place, at the frame nearest to the time; nothing off the ground or of a story without frames.
std::optional<WaterHere> water_here(const StormStory& story, double time_s, SitePoint place);

std::size_t frame_at(const StormStory& story, double time_s);  ///< the nearest; the story must have frames

/// One line each: the depth now, where it runs, the most in the storm.
std::vector<std::string> water_words(const WaterHere& water, UnitSystem units);

}  // namespace yardwright::drain::storm
