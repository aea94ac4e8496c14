#include "geom/drain/storm/section_water.hpp"

#include <catch2/catch.hpp>

#include "tests/geom/ground/test_grounds.hpp"

using namespace yardwright;
using namespace yardwright::drain::storm;

namespace {

constexpr GridFrame metre{{0, 0}, 1, 60, 20};

/// A trough that falls 1 in 10 to x = 30 and rises again.
const LevelGrid trough = ground_of(metre, [](SitePoint at) { return 10 + std::abs(at.x - 30) / 10; });

/// Water up to a level, and none where the ground is higher.
StormFrame pond(const LevelGrid& ground, double level_m) {
  StormFrame frame;
  for (const float bed_m : ground.values())
    frame.depth_mm.push_back(
        static_cast<std::uint16_t>(std::lround(std::max(0.0, level_m - static_cast<double>(bed_m)) * 1000)));
  return frame;
}

GroundSection along(const LevelGrid& ground) {
  return ground_section(DesignSurface{ground, ground}, {{2, 10}, {58, 10}});
}

}  // namespace

TEST_CASE("A pond over a known bed is level, and ends where the ground rises through it", "[storm][section]") {
  const GroundSection section = along(trough);
  const WaterLevels water = water_of(section, trough, pond(trough, 11));
  REQUIRE(water.size() == section.points.size());
  for (std::size_t i = 0; i < water.size(); ++i) {
    const double from_middle_m = std::abs(section.points[i].at.x - 30);
    CAPTURE(from_middle_m);
    if (from_middle_m < 9) {
      REQUIRE(water[i]);
      CHECK(*water[i] == Approx(11).margin(0.001));
    }
    if (from_middle_m > 11) CHECK_FALSE(water[i]);  // closed form: the shore is 10 m from the middle
  }
}

TEST_CASE("Water of one depth on a slope is told at that depth over the ground", "[storm][section]") {
  const LevelGrid slope = ground_of(metre, [](SitePoint at) { return 5 + 0.05 * at.x + 0.02 * at.y; });
  const GroundSection section = ground_section(DesignSurface{slope, slope}, {{3, 3}, {55, 17}});
  StormFrame frame;
  frame.depth_mm.assign(metre.cells(), 40);
  const WaterLevels water = water_of(section, slope, frame);
  for (std::size_t i = 0; i < water.size(); ++i)
    CHECK(*water[i] - section.points[i].levels->design_m == Approx(0.04).margin(1e-5));
}

TEST_CASE("A film is dry ground, and depths of another ground tell nothing", "[storm][section]") {
  const GroundSection section = along(trough);
  StormFrame film;
  film.depth_mm.assign(metre.cells(), 4);
  for (const auto& level : water_of(section, trough, film)) CHECK_FALSE(level);
  film.depth_mm.assign(7, 400);
  CHECK(water_of(section, trough, film) == WaterLevels(section.points.size()));
}

TEST_CASE("The deepest water lies nowhere under that of a moment", "[storm][section]") {
  const GroundSection section = along(trough);
  StormStory story;
  std::vector<float> deepest_m;
  for (const std::uint16_t depth : pond(trough, 11.5).depth_mm) deepest_m.push_back(static_cast<float>(depth) / 1000);
  story.deepest_m = {metre, deepest_m};
  const WaterLevels most = deepest_water(section, trough, story), now = water_of(section, trough, pond(trough, 10.7));
  for (std::size_t i = 0; i < now.size(); ++i) {
    if (!now[i]) continue;
    REQUIRE(most[i]);
    CHECK(*most[i] >= *now[i]);
  }
}

TEST_CASE("The water in a pit is told between two samples, and not where its floor is dry", "[storm][section]") {
  StormStory story;
  PitStory wet{.item = {1}, .floor_m = 5, .rim_m = 8};
  wet.samples = {{0, 5, 0, 0}, {60, 6, 0, 0}, {120, 7, 0, 0}};
  wet.highest_m = 7;
  PitStory dry{.item = {2}, .floor_m = 4, .rim_m = 8};
  dry.samples = {{0, 4, 0, 0}};
  dry.highest_m = 4;
  story.pits = {wet, dry};
  const auto water = pit_water_at(story, 90);
  REQUIRE(water.size() == 1);
  CHECK(water[0].item == ItemId{1});
  CHECK(water[0].level_m == Approx(6.5));
  CHECK(pit_water_at(story, 0).empty());
  CHECK(pit_water_at(story, 1e6)[0].level_m == Approx(7));
  CHECK(highest_pit_water(story).size() == 1);
}
