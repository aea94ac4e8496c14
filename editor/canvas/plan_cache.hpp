// The plan's drawing, made anew only when the site, the scale or the phase has changed.
#pragma once

#include "geom/ground/design_surface.hpp"
#include "geom/sheet/plan_drawing.hpp"

namespace yardwright::canvas {

class PlanCache {
 public:
  /// `revision` names the site's state: the same number promises the same site.
  const Drawing& drawing(const Site& site, std::uint64_t revision, const PlanStyle& style);
  const DesignSurface& surface(const Site& site, std::uint64_t revision);

 private:
  Drawing drawing_;
  DesignSurface surface_;
  std::uint64_t drawn_revision_ = 0, surface_revision_ = 0;
  double metres_per_mm_ = 0;
  int phase_ = -1;
};

}  // namespace yardwright::canvas
