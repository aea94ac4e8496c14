// Where the water of a yard runs together: the lines of the cells through which more than a small share of the ground
// drains, for a plan.
#pragma once

#include "geom/drain/flow.hpp"
#include "geom/sheet/plan_parts.hpp"

namespace yardwright {

/// From where a way begins down to where it joins another or comes to the rim of the ground; none twice.
std::vector<SitePath> gathering_ways(const drain::Flow& flow, double least_area_m2);

/// The same as thin arrows.
PlanParts water_ways(const drain::Flow& flow, const PlanStyle& style);

}  // namespace yardwright
