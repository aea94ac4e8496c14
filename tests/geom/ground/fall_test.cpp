#include "geom/ground/fall.hpp"

#include <catch2/catch.hpp>
#include <numbers>
#include <random>

#include "geom/units/bearing.hpp"

using namespace yardwright;

namespace {

/// Levels are floats: at 300 m their last digit is 0.03 mm, over a few metres.
constexpr double grade_tolerance = 2e-5, bearing_tolerance_deg = 0.1;

template <class LevelAt>
LevelGrid ground(LevelAt level_at_place) {
  const GridFrame frame{{-10, 5}, 0.5, 120, 90};
  std::vector<float> levels;
  for (std::size_t i = 0; i < frame.cells(); ++i)
    levels.push_back(static_cast<float>(level_at_place(frame.centre(frame.cell_at_offset(i)))));
  return {frame, std::move(levels)};
}

}  // namespace

TEST_CASE("A plane falls by its own grade and the way that it was tilted, wherever it is asked") {
  const unsigned seed = GENERATE(1U, 2U, 3U);
  INFO("seed " << seed);
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> grade(0.004, 0.35), turn(0, 360), east(0, 30), north(15, 40), radius(1.6, 7);
  for (int i = 0; i < 50; ++i) {
    const double fall = grade(random);
    const Bearing way = Bearing::degrees(turn(random));
    const LevelGrid levels = ground([&](SitePoint at) { return 300 - fall * dot(at - SitePoint{}, direction(way)); });
    const auto found = fall_at(levels, {east(random), north(random)}, radius(random));
    REQUIRE(found);
    CHECK(found->grade_ratio == Approx(fall).margin(grade_tolerance));
    const double off_deg = std::acos(std::min(1.0, dot(found->downhill, direction(way)))) * 180 / std::numbers::pi;
    CHECK(off_deg < bearing_tolerance_deg * 0.02 / std::min(0.02, fall));
    CHECK(found->rough_m < 1e-4);
  }
}

TEST_CASE("Level ground falls nowhere, and a ridge as much to both sides, which shows as rough") {
  const auto level = fall_at(ground([](SitePoint) { return 12.5; }), {10, 20}, 3);
  REQUIRE(level);
  CHECK(level->grade_ratio == Approx(0).margin(1e-9));
  const auto ridge = fall_at(ground([](SitePoint at) { return 12 - 0.2 * std::abs(at.x - 10); }), {10, 20}, 4);
  REQUIRE(ridge);
  CHECK(ridge->grade_ratio < 0.01);
  CHECK(ridge->rough_m > 0.1);
}

TEST_CASE("Beyond the edge, and of too few cells, no fall is told") {
  const LevelGrid levels = ground([](SitePoint at) { return 0.1 * at.x; });
  CHECK_FALSE(fall_at(levels, {-8, 20}, 3));
  CHECK_FALSE(fall_at(levels, {500, 20}, 3));
  CHECK_FALSE(fall_at(levels, {10.1, 20.1}, 0.3));
  CHECK_FALSE(fall_at({}, {10, 20}, 3));
}

TEST_CASE("The mean grade of a plane is its grade, of half a plane half of it") {
  CHECK(mean_grade(ground([](SitePoint at) { return 40 - 0.03 * at.x + 0.04 * at.y; })) == Approx(0.05).margin(1e-5));
  CHECK(mean_grade(ground([](SitePoint at) { return 0.1 * std::max(0.0, at.x - 20); })) == Approx(0.05).margin(1e-3));
  CHECK(mean_grade({}) == 0);
}
