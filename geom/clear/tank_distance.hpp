// How far a pressure tank stands from what it could burn, by its water capacity: the LP-gas table of 29 CFR
// 1910.110 and NFPA 58, and the ammonia table of WAC 296-826-30005. The rows are the law's; each row's distance
// is a rule of the book. Figures, sources and doubts: docs/methods/clear.md.
#pragma once

#include "geom/site/kinds/tank.hpp"
#include "geom/site/rule.hpp"

namespace yardwright::clear {

/// To an important building or a line of land that may be built upon.
const Rule& lp_building_rule(double water_capacity_m3, bool underground, const RuleBook& rules);
/// Between two containers above ground, by the larger; for the largest class the caller takes a quarter of the
/// sum of both diameters, if that is more.
const Rule& lp_between_rule(double water_capacity_m3, const RuleBook& rules);
/// Whether the last class applies, in which the diameters decide.
bool spaced_by_diameter(double water_capacity_m3);

/// From a property line or highway.
const Rule& ammonia_line_rule(double water_capacity_m3, const RuleBook& rules);

}  // namespace yardwright::clear
