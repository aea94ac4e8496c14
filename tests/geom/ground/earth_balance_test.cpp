#include "geom/ground/earth_balance.hpp"

#include <catch2/catch.hpp>

#include "tests/geom/ground/test_grounds.hpp"

using namespace yardwright;

namespace {

constexpr GridFrame half_metre{{0, 0}, 0.5, 200, 200};
const Pad pad{{{40, 40}, {60, 40}, {60, 60}, {40, 60}}, 0, 3.0};

Site hillside() {
  return site_with(ground_of(half_metre, [](SitePoint at) { return 100 + 0.05 * (at.x - 50); }),
                   std::vector<Thing>{pad});
}

}  // namespace

TEST_CASE("Cut earth makes less fill and fills more trucks") {
  const EarthBalance balance = earth_balance(Earthwork{1000, 700, 0, 0}, 0.25, 0.3);
  CHECK(balance.made_of_cut_m3 == Approx(750));
  CHECK(balance.loose_m3 == Approx(1300));
  CHECK(balance.left_over_m3() == Approx(50));
}

// A plane cut and filled about the middle of the pad is the same picture turned over: least and balanced at the middle's level.
TEST_CASE("On an even slope a pad moves least, and balances, at the level of its middle") {
  const Site site = hillside();
  const auto least = least_earth_level(site, pad), balanced = balanced_level(site, pad);
  REQUIRE(least);
  REQUIRE(balanced);
  CHECK(least->level_m == Approx(100).margin(0.01));
  CHECK(balanced->level_m == Approx(100).margin(0.002));
  CHECK(balanced->balance.left_over_m3() == Approx(0).margin(1.0));
}

TEST_CASE("Earth that shrinks is cut from a lower pad") {
  Site site = hillside();
  site.ground.shrink_ratio = 0.25;
  const auto balanced = balanced_level(site, pad);
  REQUIRE(balanced);
  CHECK(balanced->level_m < 99.99);
  CHECK(balanced->balance.earth.cut_m3 * 0.75 == Approx(balanced->balance.earth.fill_m3).epsilon(0.03));
}

TEST_CASE("No level near the one of least earth moves less, on rolling ground") {
  const Site site = site_with(rolling_ground(half_metre, 4), std::vector<Thing>{pad});
  const auto moved_m3 = [](const PadLevel& at) { return at.balance.earth.cut_m3 + at.balance.earth.fill_m3; };
  const auto least = least_earth_level(site, pad);
  REQUIRE(least);
  for (const double off_m : {-0.3, -0.1, 0.1, 0.3}) {
    Pad other = pad;
    other.level_m = least->level_m + off_m;
    const Earthwork earth = earthwork(design_surface(site_with(site.ground.levels, std::vector<Thing>{other})));
    CHECK(earth.cut_m3 + earth.fill_m3 >= moved_m3(*least) - 1e-6);
  }
}

TEST_CASE("A pad beside the ground, or without it, has no level of least earth") {
  CHECK_FALSE(least_earth_level(Site{}, pad));
  CHECK_FALSE(balanced_level(hillside(), Pad{{{400, 400}, {410, 400}, {410, 410}}, 0, 3.0}));
}
