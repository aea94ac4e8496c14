#include "geom/shape/innermost.hpp"

#include <catch2/catch.hpp>
#include <numbers>
#include <random>

using namespace yardwright;

TEST_CASE("The deepest place of a rectangle lies half its width in, and of a triangle at its inscribed circle") {
  const auto long_one = innermost({rectangle({{10, 10}, Bearing::degrees(20)}, 30, 8)});
  REQUIRE(long_one);
  CHECK(long_one->depth_m == Approx(4).margin(0.02));
  // 3-4-5: the inscribed circle has radius 1. Euclid IV.4.
  const auto triangle = innermost({Polygon{{{0, 0}, {4, 0}, {0, 3}}, {}}}, 0.001);
  REQUIRE(triangle);
  CHECK(triangle->depth_m == Approx(1).margin(0.001));
  CHECK(distance(triangle->at, {1, 1}) < 0.05);
}

TEST_CASE("A hole pushes the deepest place aside, and of two areas the deeper one is taken") {
  const Polygon ring{disc({0, 0}, 20, 720).outer, {disc({4, 0}, 10, 720).outer}};
  const auto inner = innermost({ring, rectangle({{100, 0}, Bearing::degrees(0)}, 10, 10)});
  REQUIRE(inner);
  CHECK(inner->depth_m == Approx(7).margin(0.03));  // between the rims on the far side: (20 - (10 - 4)) / 2
  CHECK(inner->at.x == Approx(-13).margin(0.3));
}

TEST_CASE("No place of a thrown region is deeper than the deepest") {
  std::mt19937 random{9};
  std::uniform_real_distribution<double> place{0, 100}, size{4, 15};
  for (int round = 0; round < 10; ++round) {
    Region holes;
    for (int i = 0; i < 12; ++i) holes.push_back(disc({place(random), place(random)}, size(random), 24));
    const Region region = without({rectangle({{50, 50}, Bearing::degrees(0)}, 100, 100)}, united(holes));
    const auto best = innermost(region);
    REQUIRE(best);
    double deepest_m = 0;
    for (int i = 0; i < 3000; ++i)
      deepest_m = std::max(deepest_m, depth_within_m(region, {place(random), place(random)}));
    INFO("round " << round);
    CHECK(deepest_m <= best->depth_m + 0.02);
    CHECK(depth_within_m(region, best->at) == Approx(best->depth_m));
  }
}

TEST_CASE("Nothing has no deepest place") { CHECK_FALSE(innermost({})); }
