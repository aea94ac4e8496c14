#include "geom/drain/storm/water_here.hpp"

#include <catch2/catch.hpp>

#include "geom/io/catalogs.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain::storm;

namespace {

/// A street 40 m wide that falls 2 % to the south, in a storm of 5 in.
StormStory sheet_story() {
  Site site;
  site.ground.levels = drain::ground_of(40, 80, 1, [](SitePoint at) { return 100 + 0.02 * at.y; });
  site.storm.rain_m = 5 * 0.0254;
  site.storm.cover = "paved";
  StormOptions options;
  options.start_s = 11.5 * 3600;
  options.length_s = 3600;
  const auto story = run_storm(site, design_surface(site), shipped_catalogs(), options);
  REQUIRE(story);
  return *story;
}

}  // namespace

// Manning's equation for a wide sheet, v = h^(2/3) S^(1/2) / n (FHWA HEC-22, sheet flow as a wide channel): where the water runs
// steadily down an even plane, speed and depth of a frame must belong together by one and the same n.
TEST_CASE("Water told at a place of an even plane runs down it, as fast as its depth wants", "[storm][drain]") {
  const StormStory story = sheet_story();
  const auto at = [&](double y) { return *water_here(story, 12.0 * 3600, {20.5, y}); };
  const WaterHere high = at(50.5), low = at(10.5);
  REQUIRE(low.depth_m > 0.004);
  CHECK(low.velocity_m_per_s.y < 0);
  CHECK(std::abs(low.velocity_m_per_s.x) < 0.05 * -low.velocity_m_per_s.y);
  CHECK(low.depth_m > high.depth_m);
  const WaterHere fullest = *water_here(story, low.fastest_at_s, {20.5, 10.5});
  CHECK(fullest.depth_m == Approx(fullest.deepest_m).margin(0.001));
  CHECK(std::hypot(fullest.velocity_m_per_s.x, fullest.velocity_m_per_s.y) == Approx(fullest.fastest_m_per_s));
  const double n = std::pow(fullest.depth_m, 2.0 / 3) * std::sqrt(0.02) / fullest.fastest_m_per_s;
  CHECK(n == Approx(0.011).epsilon(0.15));  // smooth surfaces, TR-55 table 3-1; depths are kept to a millimetre
}

TEST_CASE("The frame told is the nearest, and off the ground nothing is", "[storm][drain]") {
  const StormStory story = sheet_story();
  REQUIRE(story.frames.size() > 2);
  CHECK(frame_at(story, -1) == 0);
  CHECK(frame_at(story, 1e9) == story.frames.size() - 1);
  CHECK(frame_at(story, story.frames[1].time_s + 1) == 1);
  CHECK_FALSE(water_here(story, 12.0 * 3600, {-3, 20}));
  CHECK_FALSE(water_here({}, 12.0 * 3600, {20, 20}));
}

TEST_CASE("Water that stands is not said to run", "[storm][drain]") {
  const auto lines = water_words({12.0 * 3600, 0.3, {0.001, 0}, 0.5, 0.004, 0}, UnitSystem::us);
  REQUIRE(lines.size() == 3);
  CHECK(lines[0] == "11.8 in of water at hour 12.0");
  CHECK(lines[1] == "it stands");
  CHECK(lines[2] == "in this storm at most 19.7 in deep");
  CHECK(water_words({12.0 * 3600, 0.002, {}, 0.5, 0.8, 11.9 * 3600}, UnitSystem::us).front() ==
        "Dry, or wet ground alone, at hour 12.0");
  CHECK(water_words({12.0 * 3600, 0.3, {0.3, -0.3}, 0.5, 0.8, 11.9 * 3600}, UnitSystem::us)[1] ==
        "it runs south-east at 1.39 ft/s");
}
