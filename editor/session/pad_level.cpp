#include "editor/session/pad_level.hpp"

#include <cmath>

namespace yardwright::session {

namespace {

constexpr int samples = 24;  // along each side of the outline's box
constexpr double foot_step_ratio = 0.1, metre_step_m = 0.05;

double rounded(double level_m, UnitSystem units) {
  const double step_m = units == UnitSystem::us ? foot_step_ratio * foot_m : metre_step_m;
  return std::round(level_m / step_m) * step_m;
}

}  // namespace

double even_pad_level_m(const Site& site, const SitePath& outline) {
  const LevelGrid& ground = site.ground.levels;
  if (ground.empty() || outline.size() < 3) return 0;
  const Box box = box_of(outline);
  const SiteVector size = box.high - box.low;
  double sum_m = 0;
  int count = 0;
  for (int i = 0; i < samples * samples; ++i) {
    const SitePoint at =
        box.low + SiteVector{size.x * (i % samples + 0.5) / samples, size.y * (i / samples + 0.5) / samples};
    if (!contains(Polygon{outline, {}}, at)) continue;
    sum_m += level_at(ground, at);
    ++count;
  }
  return rounded(count > 0 ? sum_m / count : level_at(ground, outline.front()), site.units);
}

}  // namespace yardwright::session
