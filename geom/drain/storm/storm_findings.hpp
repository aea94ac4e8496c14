// Judges the story of a storm: every pit by the water over its floor, every bin, dryer and building by the water against
// its wall. The curb and the pump that would keep a pit dry are found from the story itself; run the storm again to see.
// Page: docs/methods/storm.md
#pragma once

#include "geom/drain/storm/storm.hpp"
#include "geom/site/finding.hpp"

namespace yardwright::drain::storm {

Findings judge_storm(const Site& site, const StormStory& story, const RuleBook& rules);

/// The least pump that keeps a tank under a level, of the tank's own floats, against an inflow told by samples;
/// nothing where no pump of a cubic metre a second does.
std::optional<double> pump_that_holds_m3_per_s(const PitTank& tank, std::span<const PitSample> samples, double level_m);

}  // namespace yardwright::drain::storm
