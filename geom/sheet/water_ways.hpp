// Where the water of a yard runs together: the lines of the cells through which more than a small share of the ground
// drains, for a plan.
#pragma once

#include "geom/drain/drain.hpp"
#include "geom/sheet/plan_parts.hpp"

namespace yardwright {

/// From where a way begins down to where it joins another or comes to the rim of the ground; none twice.
std::vector<SitePath> gathering_ways(const drain::Flow& flow, double least_area_m2);

/// The ways of an answer's water, each once: where one joins another it ends.
struct WaterWays {
  std::vector<SitePath> told;       ///< the longest to each pit, and out of each pond
  std::vector<SitePath> gathering;  ///< else where much of the ground drains, without the steps of the cells
};
WaterWays water_ways(const drain::Answer& answer);

/// As thin lines with an arrowhead every so often, and what keeps a plan's words off them; too short ones left out.
PlanParts way_parts(const WaterWays& ways, double metres_per_mm);

extern const Stroke told_way_stroke, gathering_way_stroke;

}  // namespace yardwright
