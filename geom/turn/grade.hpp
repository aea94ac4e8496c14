// How steep the design surface is along a line, over stretches of a length. Metres; grades as rise over run.
#pragma once

#include "geom/ground/design_surface.hpp"

namespace yardwright::turn {

/// The steepest grade, up or down, over any stretch of `over_m` along a line (the whole line where it is shorter),
/// and the middle of that stretch.
struct Steepest {
  double grade_ratio = 0;
  SitePoint at;
};
Steepest steepest_grade(const SitePath& line, const DesignSurface& surface, double over_m);

/// The middles of all such stretches that are steeper than a ratio.
SitePath steeper_places(const SitePath& line, const DesignSurface& surface, double over_m, double ratio);

}  // namespace yardwright::turn
