#include "editor/session/pad_level.hpp"

#include <catch2/catch.hpp>

#include "geom/ground/earth_balance.hpp"

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

double left_over_m3(Site site, Pad pad, double level_m) {
  pad.level_m = level_m;
  site.items = {{{1}, "", 0, {}, pad}};
  return earth_balance(site, design_surface(site)).left_over_m3();
}

}  // namespace

// The pad's cut and fill on an even slope mirror each other about the middle of a rectangle.
TEST_CASE("A new pad lies where its cut makes just its fill, its slopes with them") {
  const Site site = sloping(UnitSystem::metric);
  CHECK(even_pad_level_m(site, Pad{{{20, 20}, {60, 20}, {60, 50}, {20, 50}}}) == Approx(104).margin(0.03));
  for (const Pad& pad : {Pad{{{10, 10}, {70, 10}, {10, 70}}}, Pad{{{30, 20}, {80, 30}, {60, 75}, {35, 60}}}}) {
    const double level_m = even_pad_level_m(site, pad), step_m = 0.05;  // to which it is rounded
    CHECK(left_over_m3(site, pad, level_m - step_m) > 0);
    CHECK(left_over_m3(site, pad, level_m + step_m) < 0);
  }
}

TEST_CASE("A new pad's level is round in the site's units") {
  const double level_m = even_pad_level_m(sloping(UnitSystem::us), Pad{{{20, 20}, {61, 20}, {61, 50}, {20, 50}}});
  const double tenths = level_m / foot_m * 10;
  CHECK(tenths == Approx(std::round(tenths)).margin(1e-6));
}

TEST_CASE("Without levels or without an area a new pad lies at zero or at its first corner") {
  CHECK(even_pad_level_m(Site{}, Pad{{{0, 0}, {1, 0}, {1, 1}}}) == 0);
  CHECK(even_pad_level_m(sloping(UnitSystem::metric), Pad{{{50, 50}, {50, 50}, {50, 50}}}) == Approx(105).margin(0.05));
}
