// The ground as it lies and as it will lie: existing levels, with the site's pads, berms and swales cut and
// filled into them with their side slopes. Levels in metres above the ground's datum.
#pragma once

#include "geom/site/site.hpp"

namespace yardwright {

struct DesignSurface {
  LevelGrid existing;  ///< empty where the site has no ground
  LevelGrid design;    ///< the same frame

  /// Whether there is ground at all; without it every level is 0.
  bool known() const { return !existing.empty(); }
  double existing_level_m(SitePoint at) const { return known() ? level_at(existing, at) : 0.0; }
  double level_m(SitePoint at) const { return known() ? level_at(design, at) : 0.0; }
};

DesignSurface design_surface(const Site& site);

}  // namespace yardwright
