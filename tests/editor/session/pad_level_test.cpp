#include "editor/session/pad_level.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;
using namespace yardwright::session;

namespace {

/// z = 100 + x / 10 over [0, 100] x [0, 100].
Site sloping(UnitSystem units) {
  const GridFrame frame{{0, 0}, 1, 100, 100};
  std::vector<float> levels;
  for (std::size_t i = 0; i < frame.cells(); ++i)
    levels.push_back(static_cast<float>(100 + frame.centre(frame.cell_at_offset(i)).x / 10));
  Site site;
  site.units = units;
  site.ground.levels = LevelGrid{frame, std::move(levels)};
  return site;
}

}  // namespace

// The mean of a plane over an outline is its level at the outline's centroid.
TEST_CASE("A new pad lies at the ground's mean level, so that cut and fill are about even") {
  const Site site = sloping(UnitSystem::metric);
  CHECK(even_pad_level_m(site, {{20, 20}, {60, 20}, {60, 50}, {20, 50}}) == Approx(104).margin(0.03));
  CHECK(even_pad_level_m(site, {{10, 10}, {70, 10}, {10, 70}}) == Approx(103).margin(0.1));
}

TEST_CASE("A new pad's level is round in the site's units") {
  const double level_m = even_pad_level_m(sloping(UnitSystem::us), {{20, 20}, {61, 20}, {61, 50}, {20, 50}});
  const double tenths = level_m / foot_m * 10;
  CHECK(tenths == Approx(std::round(tenths)).margin(1e-6));
}

TEST_CASE("Without levels or without an area a new pad lies at zero or at its first corner") {
  CHECK(even_pad_level_m(Site{}, {{0, 0}, {1, 0}, {1, 1}}) == 0);
  CHECK(even_pad_level_m(sloping(UnitSystem::metric), {{50, 50}, {50, 50}, {50, 50}}) == Approx(105).margin(0.05));
}
