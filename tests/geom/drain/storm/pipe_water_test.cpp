#include "geom/drain/storm/pipe_water.hpp"

#include <catch2/catch.hpp>
#include <numbers>

#include "tests/geom/ground/test_grounds.hpp"

using namespace yardwright;
using namespace yardwright::drain::storm;

namespace {

constexpr GridFrame metre{{0, 0}, 1, 60, 20};
const LevelGrid level_ground = flat_ground(metre, 100);
constexpr double level_m = 1e-4;

Site culvert_yard() {
  Culvert culvert;
  culvert.path = {{10, 10}, {40, 10}};
  culvert.diameter_m = 0.6;
  culvert.start_depth_m = 1.0;
  culvert.end_depth_m = 1.3;  // 1 %
  culvert.roughness_n = 0.013;
  return site_with(level_ground, std::vector<Thing>{culvert});
}

/// Manning, of a pipe that is just full: A R^(2/3) S^(1/2) / n.
double full_flow() { return std::numbers::pi * 0.09 * std::pow(0.15, 2.0 / 3) * std::sqrt(0.01) / 0.013; }

StormStory story_with(const Site& site, double flow_m3_per_s) {
  StormStory story;
  story.times_s = {0, 60};
  PipeStory pipe{site.items.front().id, {0, flow_m3_per_s}, flow_m3_per_s};
  story.culverts = {pipe};
  return story;
}

Site tunnel_yard() {
  Tunnel tunnel;
  tunnel.path = {{10, 10}, {30, 10}};
  tunnel.from = {7};
  tunnel.to = {8};
  tunnel.sill_depth_m = 2;
  return site_with(level_ground, std::vector<Thing>{tunnel});
}

PitStory pit(int number, double highest_m) {
  PitStory story{.item = {number}, .floor_m = 97, .rim_m = 100};
  story.samples = {{0, 97, 0, 0}, {100, highest_m, 0, 0}};
  story.highest_m = highest_m;
  return story;
}

}  // namespace

TEST_CASE("A culvert runs half full with half of what it carries full", "[storm][section]") {
  const Site site = culvert_yard();
  const auto water = highest_pipe_water(site, level_ground, story_with(site, full_flow() / 2));
  REQUIRE(water.size() == 1);
  CHECK(water[0].level_m({10, 10}) == Approx(99 + 0.3).margin(level_m));
  CHECK(water[0].level_m({25, 10}) == Approx(98.85 + 0.3).margin(level_m));
  CHECK(water[0].level_m({40, 10}) == Approx(98.7 + 0.3).margin(level_m));
}

TEST_CASE("A culvert that is asked for more than it carries with a free surface is full, one without flow is dry",
          "[storm][section]") {
  const Site site = culvert_yard();
  CHECK(highest_pipe_water(site, level_ground, story_with(site, 2 * full_flow()))[0].start_m == Approx(99.6));
  CHECK(highest_pipe_water(site, level_ground, story_with(site, 0)).empty());
  CHECK(highest_pipe_water(site, level_ground, {}).empty());
}

TEST_CASE("Water that stands at a culvert's lower end stands in it up to its level", "[storm][section]") {
  Site site = culvert_yard();
  std::get<Culvert>(site.items.front().thing).end_depth_m = 0.2;
  std::get<Culvert>(site.items.front().thing).start_depth_m = 0;
  StormStory story = story_with(site, 0);
  std::vector<float> depths(metre.cells(), 0);
  for (std::size_t i = 0; i < depths.size(); ++i)
    if (metre.centre(metre.cell_at_offset(i)).x > 35) depths[i] = 0.05F;
  story.deepest_m = {metre, depths};
  const auto water = highest_pipe_water(site, level_ground, story);
  REQUIRE(water.size() == 1);
  for (const double x : {10.0, 25.0, 40.0}) CHECK(water[0].level_m({x, 10}) == Approx(100.05).margin(level_m));
}

TEST_CASE("At a moment a culvert's flow is that between two samples", "[storm][section]") {
  const Site site = culvert_yard();
  const StormStory story = story_with(site, full_flow());
  const auto water = pipe_water_at(site, level_ground, story, nullptr, 30);
  REQUIRE(water.size() == 1);
  CHECK(water[0].start_m == Approx(99.3).margin(level_m));
  CHECK(pipe_water_at(site, level_ground, story, nullptr, 0).empty());
}

TEST_CASE("In a tunnel water lies straight between its pits, and over its sill", "[storm][section]") {
  const Site site = tunnel_yard();
  StormStory story;
  story.pits = {pit(7, 99), pit(8, 97.4)};
  const auto water = highest_pipe_water(site, level_ground, story);
  REQUIRE(water.size() == 1);
  CHECK(water[0].level_m({10, 10}) == Approx(99));
  CHECK(water[0].level_m({20, 10}) == Approx(98.5));
  CHECK(water[0].level_m({30, 10}) == Approx(98));  // the sill: the lower pit's water lies under it
  CHECK(pipe_water_at(site, level_ground, story, nullptr, 75)[0].start_m == Approx(98.5));
  story.pits = {pit(7, 97.9), pit(8, 97.4)};
  CHECK(highest_pipe_water(site, level_ground, story).empty());
}
