// The plan's drawing, made anew only when the site, the scale, the phase or a picture has changed; and of its ground
// what is the same at every scale, made anew only when the ground's shape has changed.
#pragma once

#include "geom/ground/design_surface.hpp"
#include "geom/sheet/plan_drawing.hpp"

namespace yardwright::canvas {

class PlanCache {
 public:
  /// `revision` names the site's state: the same number promises the same site.
  const Drawing& drawing(const Site& site, std::uint64_t revision, PlanStyle style);
  /// As it was last made.
  const Drawing& drawn() const { return drawing_; }
  /// How often the ground's shades and contours have been made.
  int times_shaped() const { return times_shaped_; }

 private:
  void shape_ground(const Site& site, std::uint64_t revision);

  Drawing drawing_;
  DesignSurface surface_;
  std::shared_ptr<const GroundShape> ground_;
  Site shaped_;  ///< what the surface was made of
  UnitSystem shaped_units_ = UnitSystem::us;
  int times_shaped_ = 0;
  std::uint64_t drawn_revision_ = 0, surface_revision_ = 0;
  double metres_per_mm_ = 0;
  int phase_ = -1;
  std::vector<PicturePixels> pictures_;
};

}  // namespace yardwright::canvas
