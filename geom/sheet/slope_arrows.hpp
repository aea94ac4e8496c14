// Which way the ground will fall and how steeply, as arrows over the graded ground, the drives that are graded, and the open
// ground of the lot: each points downhill and says its grade in percent. As far apart on the paper at every scale, off all
// that stands and is drawn there, and left out where the ground is level, bent or broken. docs/methods/sheet.md
#pragma once

#include "geom/sheet/marks.hpp"
#include "geom/sheet/plan_parts.hpp"
#include "geom/site/site.hpp"

namespace yardwright {

struct SlopeArrow {
  SitePoint at;
  SiteVector downhill;  ///< unit vector
  double grade_ratio = 0;
};

/// Of the design surface, averaged over an arrow's length. `keep_off`: what they may not lie on, whatever its weight.
/// Within the lot; where there is none, on all known ground.
std::vector<SlopeArrow> slope_arrows(const Site& site, const DesignSurface& surface,
                                     const std::vector<Obstacle>& keep_off, double metres_per_mm);

/// The arrows with their numbers, and what keeps a plan's words off them.
PlanParts slope_arrow_parts(const std::vector<SlopeArrow>& arrows, double metres_per_mm);

/// "1.9%", "12%".
std::string slope_words(double grade_ratio);

/// An arrow as it stands in the key, to the right of (0, 0).
SymbolMarks slope_arrow_sample();

}  // namespace yardwright
