// The least gradings that bring a route under its greatest grade: of the drives that it runs on, or of a new drive along
// it. Each is found by shaping the ground anew and measuring the grade as the check does.
#pragma once

#include "geom/ground/design_surface.hpp"
#include "geom/site/finding.hpp"
#include "geom/turn/route_case.hpp"

namespace yardwright::turn {

/// The grade that a route may have over any stretch of a length.
struct GradeLimit {
  double ratio = 0;
  double over_m = 0;
};

/// The best first: drives that are there before a new one. `steepest_ratio` is the route's grade today.
std::vector<Mend> grade_mends(const RouteCase& route, const DesignSurface& surface, const GradeLimit& limit,
                              double steepest_ratio);

}  // namespace yardwright::turn
