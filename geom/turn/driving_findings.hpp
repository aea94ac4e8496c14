// Findings about the driving itself: the radius of the route's corners, hitch angles, the grade of the way.
#pragma once

#include "geom/ground/design_surface.hpp"
#include "geom/site/finding.hpp"
#include "geom/site/mend_search.hpp"
#include "geom/site/rule.hpp"
#include "geom/turn/route_case.hpp"

namespace yardwright::turn {

Finding radius_finding(const RouteCase& route, const RuleBook& rules);
Finding hitch_finding(const RouteCase& route, const RuleBook& rules, MendSearch& search);
Finding grade_finding(const RouteCase& route, const DesignSurface& surface, const RuleBook& rules);

/// Whether the way comes to every stop, in their order.
Findings stop_findings(const RouteCase& route, const RuleBook& rules);

/// The steepest grade, up or down, over any stretch of `over_m` along a line (the whole line where it is shorter),
/// and the middle of that stretch.
struct Steepest {
  double grade_ratio = 0;
  SitePoint at;
};
Steepest steepest_grade(const SitePath& line, const DesignSurface& surface, double over_m);

}  // namespace yardwright::turn
