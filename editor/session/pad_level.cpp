#include "editor/session/pad_level.hpp"

#include <cmath>

#include "geom/ground/earth_balance.hpp"

namespace yardwright::session {

namespace {

constexpr double foot_step_ratio = 0.1, metre_step_m = 0.05;

double rounded(double level_m, UnitSystem units) {
  const double step_m = units == UnitSystem::us ? foot_step_ratio * foot_m : metre_step_m;
  return std::round(level_m / step_m) * step_m;
}

}  // namespace

double even_pad_level_m(const Site& site, const Pad& pad) {
  if (site.ground.levels.empty() || pad.outline.size() < 3) return 0;
  const auto balanced = balanced_level(site, pad);
  return rounded(balanced ? balanced->level_m : level_at(site.ground.levels, pad.outline.front()), site.units);
}

}  // namespace yardwright::session
