#include "editor/canvas/plan_cache.hpp"

#include <algorithm>

#include "geom/check/reads.hpp"

namespace yardwright::canvas {

namespace {

bool same_pictures(const std::vector<PicturePixels>& a, const std::vector<PicturePixels>& b) {
  return std::ranges::equal(a, b, [](const PicturePixels& one, const PicturePixels& other) {
    return one.item == other.item && one.pixels.colours().data() == other.pixels.colours().data();
  });
}

}  // namespace

void PlanCache::shape_ground(const Site& site, std::uint64_t revision) {
  if (surface_revision_ == revision) return;
  surface_revision_ = revision;
  Site shaped = read_by_surface(site);
  if (ground_ && shaped == shaped_ && shaped_units_ == site.units) return;
  surface_ = design_surface(site);
  ground_ = std::make_shared<const GroundShape>(ground_shape(surface_, site.units));
  shaped_ = std::move(shaped);
  shaped_units_ = site.units;
  ++times_shaped_;
}

const Drawing& PlanCache::drawing(const Site& site, std::uint64_t revision, PlanStyle style) {
  const bool same = drawn_revision_ == revision && metres_per_mm_ == style.metres_per_mm &&
                    phase_ == style.built_phase && same_pictures(pictures_, style.pictures);
  if (same) return drawing_;
  shape_ground(site, revision);
  style.ground = ground_;
  drawing_ = plan_drawing(site, surface_, style);
  drawn_revision_ = revision;
  metres_per_mm_ = style.metres_per_mm;
  phase_ = style.built_phase;
  pictures_ = std::move(style.pictures);
  return drawing_;
}

}  // namespace yardwright::canvas
