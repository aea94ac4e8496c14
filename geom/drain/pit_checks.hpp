// Judges the water around a pit: the freeboard of its rim over the pond, and what runs past a rim that is flush.
#pragma once

#include "geom/drain/pit_water.hpp"
#include "geom/site/finding.hpp"

namespace yardwright::drain {

Findings judge_pit(const Item& item, const PitWater& water, const RuleBook& rules);

}  // namespace yardwright::drain
