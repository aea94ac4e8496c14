#include "geom/ground/ground_section.hpp"

#include <catch2/catch.hpp>

#include "tests/geom/ground/test_grounds.hpp"

using namespace yardwright;

namespace {

constexpr GridFrame half_metre{{0, 0}, 0.5, 200, 200};  // 100 m by 100 m
constexpr double float_m = 1e-4;                        // what a float keeps of a level of some hundred metres

GroundSection cut(LevelGrid ground, std::vector<Thing> things, const SitePath& path) {
  return ground_section(design_surface(site_with(std::move(ground), std::move(things))), path);
}

}  // namespace

TEST_CASE("A section of a plane is a straight line, and its chainage is the distance walked", "[section]") {
  const auto plane = ground_of(half_metre, [](SitePoint at) { return 50 + 0.03 * at.x - 0.02 * at.y; });
  const GroundSection section = cut(plane, {}, {{10, 10}, {40, 50}, {40, 80}});  // 3-4-5: 50 m, then 30 m
  CHECK(section.length_m() == Approx(80));
  for (const SectionPoint& point : section.points) {
    REQUIRE(point.levels);
    CHECK(point.levels->existing_m == Approx(50 + 0.03 * point.at.x - 0.02 * point.at.y).margin(float_m));
    CHECK(point.levels->design_m == point.levels->existing_m);
  }
  const auto at_corner = std::ranges::find(section.points, SitePoint{40, 50}, &SectionPoint::at);
  REQUIRE(at_corner != section.points.end());
  CHECK(at_corner->chainage_m == Approx(50));
  for (std::size_t i = 1; i < section.points.size(); ++i) {
    const double gap_m = section.points[i].chainage_m - section.points[i - 1].chainage_m;
    CHECK(gap_m > 0);
    CHECK(gap_m <= 0.5 + 1e-9);
  }
}

TEST_CASE("A section over a fill pad shows its level top, its slopes and the ground under it", "[section]") {
  const SitePath square{{40, 40}, {60, 40}, {60, 60}, {40, 60}};
  const GroundSection section = cut(flat_ground(half_metre, 100), {Pad{square, 101, 3.0}}, {{20, 50}, {80, 50}});
  // Closed form: the top from 20 to 40 m of the line at 101, the toe 3 m out at 3:1.
  for (const auto& [chainage_m, level_m] :
       {std::pair{10.0, 100.0}, {16.0, 100.0}, {30.0, 101.0}, {41.5, 100.5}, {44.0, 100.0}}) {
    const auto levels = levels_at(section, chainage_m);
    REQUIRE(levels);
    CHECK(levels->existing_m == Approx(100));
    CHECK(levels->design_m == Approx(level_m).margin(0.09));  // half a cell at 3:1
  }
}

TEST_CASE("A section across a berm stands at its height and falls at its slope", "[section]") {
  const Berm berm{{{50, 10}, {50, 90}}, 1.0, 2.0, 4.0};
  const GroundSection section = cut(flat_ground(half_metre, 30), {berm}, {{30, 50}, {70, 50}});
  CHECK(levels_at(section, 20)->design_m == Approx(31));
  // Closed form: the edge of the top is 1 m from the middle, 2 m beyond it the slope has fallen by half a metre.
  CHECK(levels_at(section, 17)->design_m == Approx(30.5).margin(0.07));
  CHECK(levels_at(section, 23)->design_m == Approx(30.5).margin(0.07));
  CHECK(levels_at(section, 14.4)->design_m == Approx(30).margin(float_m));
  CHECK(levels_at(section, 20)->existing_m == Approx(30));
}

TEST_CASE("Beyond the known ground a section has no level, and without ground nowhere", "[section]") {
  const GroundSection section = cut(flat_ground(half_metre, 5), {}, {{90, 50}, {130, 50}});
  CHECK(levels_at(section, 9.9));
  CHECK_FALSE(levels_at(section, 10.6));
  CHECK_FALSE(levels_at(section, 41));
  CHECK_FALSE(levels_at(section, -1));
  const GroundSection nowhere = cut({}, {}, {{0, 0}, {10, 0}});
  CHECK(nowhere.points.size() == 11);
  for (const SectionPoint& point : nowhere.points) CHECK_FALSE(point.levels);
}

TEST_CASE("A line without length has no section", "[section]") {
  for (const SitePath& path : {SitePath{}, SitePath{{1, 1}}, SitePath{{1, 1}, {1, 1}}})
    CHECK(cut(flat_ground(half_metre, 5), {}, path).points.empty());
  CHECK_FALSE(levels_at({}, 0));
}

TEST_CASE("A section of any ground stays between the levels of the cells around it", "[section]") {
  const unsigned seed = GENERATE(1U, 2U, 3U);
  CAPTURE(seed);
  const GroundSection section = cut(rough_ground(half_metre, seed, 3), {}, {{-5, 3}, {50, 97}, {99, 1}});
  for (const SectionPoint& point : section.points) {
    if (!point.levels) continue;
    CHECK(point.levels->existing_m >= 0);
    CHECK(point.levels->existing_m <= 3);
  }
}

TEST_CASE("A line of any length is cut into a number of points that can be drawn", "[section]") {
  const GroundSection section = cut(flat_ground(half_metre, 5), {}, {{-1e6, 50}, {1e6, 50}});
  CHECK(section.points.size() <= 20'002);
  CHECK(section.length_m() == Approx(2e6));
}
