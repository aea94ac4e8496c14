// The ground as it lies and as it will lie: existing levels, with the site's pads, graded drives, swales
// and berms cut and filled into them, in that order and each kind in the site's order. Levels in metres above the ground's datum.
// A side slope runs from its pad, drive, swale or berm to where it first meets the ground, or a retaining wall, and ends
// there. Assumes cells
// small against the things graded; a feature's ends are rounded. docs/methods/ground.md
#pragma once

#include <optional>

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

/// Whether it changes the ground: a pad, swale or berm, a drive that is graded, or a wall that holds their slopes.
bool shapes_ground(const Thing& thing);

/// Shares the existing levels' data where the site grades nothing.
DesignSurface design_surface(const Site& site);

/// The box of the cells that the item alone would change in this ground; nothing where it changes none.
std::optional<Box> affected_area(const Item& item, const LevelGrid& ground);

/// The box of the cells whose levels differ, of two grids of one frame: what an edit has really moved.
std::optional<Box> changed_area(const LevelGrid& before, const LevelGrid& after);

}  // namespace yardwright
