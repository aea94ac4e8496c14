// Grounds of closed form and seeded random ones, shared by the tests of geom/ground.
#pragma once

#include <random>

#include "geom/site/site.hpp"

namespace yardwright {

/// `level_of(point)` at every cell centre.
template <class LevelOf>
LevelGrid ground_of(const GridFrame& frame, LevelOf level_of) {
  std::vector<float> levels;
  levels.reserve(frame.cells());
  for (std::size_t i = 0; i < frame.cells(); ++i)
    levels.push_back(static_cast<float>(level_of(frame.centre(frame.cell_at_offset(i)))));
  return {frame, std::move(levels)};
}

inline LevelGrid flat_ground(const GridFrame& frame, double level_m) {
  return ground_of(frame, [level_m](SitePoint) { return level_m; });
}

/// Every cell's level drawn by itself: the roughest ground there is.
inline LevelGrid rough_ground(const GridFrame& frame, unsigned seed, double relief_m) {
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> level_m{0, relief_m};
  return ground_of(frame, [&](SitePoint) { return level_m(random); });
}

/// Long swells: slopes of a few percent.
inline LevelGrid rolling_ground(const GridFrame& frame, unsigned seed) {
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> phase{0, 6.28}, wave_m{60, 200};
  const double a = phase(random), b = phase(random), u = wave_m(random), v = wave_m(random);
  return ground_of(
      frame, [=](SitePoint at) { return 100 + 2 * std::sin(a + at.x / u * 6.28) + 2 * std::sin(b + at.y / v * 6.28); });
}

template <class Thing>
Site site_with(LevelGrid ground, std::vector<Thing> things) {
  Site site;
  site.ground.levels = std::move(ground);
  for (const Thing& thing : things) site.items.push_back({next_id(site), "", 0, {}, thing});
  return site;
}

}  // namespace yardwright
