// Findings about the driving itself: the radius of the route's corners, hitch angles, the grade of the way.
#pragma once

#include "geom/ground/design_surface.hpp"
#include "geom/site/finding.hpp"
#include "geom/site/mend_search.hpp"
#include "geom/site/rule.hpp"
#include "geom/turn/route_case.hpp"

namespace yardwright::turn {

Finding radius_finding(const RouteCase& route, const RuleBook& rules, MendSearch& search);
Finding hitch_finding(const RouteCase& route, const RuleBook& rules, MendSearch& search);
Finding grade_finding(const RouteCase& route, const DesignSurface& surface, const RuleBook& rules, MendSearch& search);

/// Whether the way comes to every stop, in their order.
Findings stop_findings(const RouteCase& route, const RuleBook& rules, MendSearch& search);

}  // namespace yardwright::turn
