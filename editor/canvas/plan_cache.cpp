#include "editor/canvas/plan_cache.hpp"

namespace yardwright::canvas {

const DesignSurface& PlanCache::surface(const Site& site, std::uint64_t revision) {
  if (surface_revision_ != revision) surface_ = design_surface(site);
  surface_revision_ = revision;
  return surface_;
}

const Drawing& PlanCache::drawing(const Site& site, std::uint64_t revision, const PlanStyle& style) {
  const bool same = drawn_revision_ == revision && metres_per_mm_ == style.metres_per_mm && phase_ == style.built_phase;
  if (!same) drawing_ = plan_drawing(site, surface(site, revision), style);
  drawn_revision_ = revision;
  metres_per_mm_ = style.metres_per_mm;
  phase_ = style.built_phase;
  return drawing_;
}

}  // namespace yardwright::canvas
