// Findings about the room beside a route: things that stand, jambs, pits, the neighbours' edges; with mends.
#pragma once

#include "geom/site/mend_search.hpp"
#include "geom/site/rule.hpp"
#include "geom/turn/route_case.hpp"
#include "geom/turn/turn.hpp"

namespace yardwright::turn {

/// Every clearance of a route, in the site's order, the lot's edges last.
std::vector<ItemClearance> clearances_of(const RouteCase& route);

/// What is too near, each with its mends where there is time for them; of the rest only the nearest of each rule.
Findings room_findings(const RouteCase& route, const RuleBook& rules, const std::vector<ItemClearance>& clearances,
                       MendSearch& search);

}  // namespace yardwright::turn
