// Judges the water around a pit: the freeboard of its rim over the pond, and what runs past a rim that is flush.
#pragma once

#include "geom/drain/pit_water.hpp"
#include "geom/site/finding.hpp"

namespace yardwright::drain {

/// Chances are told over the life of the yard.
Findings judge_pit(const Item& item, const PitWater& water, const RuleBook& rules, double yard_life_years);

}  // namespace yardwright::drain
