// Findings about openings that a route goes through and what hangs over it: door width and height, gates, raised
// beds, spouts, conveyors and stands. Heights in metres above the ground.
#pragma once

#include "geom/ground/design_surface.hpp"
#include "geom/site/finding.hpp"
#include "geom/site/rule.hpp"
#include "geom/turn/route_case.hpp"

namespace yardwright::turn {

/// Doors and raised bed of every receiving, opening of every gate, underside of every stand on the way.
Findings opening_findings(const RouteCase& route, const RuleBook& rules);

/// Spouts and conveyors that cross over the swept way.
Findings overhead_findings(const RouteCase& route, const DesignSurface& surface, const RuleBook& rules);

}  // namespace yardwright::turn
