#include "geom/drain/storm/storm_curves.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;
using namespace yardwright::drain::storm;

namespace {

const Site yard = [] {
  Site site;
  site.items.push_back({ItemId{1}, "Sump", 0, {}, Pit{}});
  site.items.push_back({ItemId{2}, "Pipe", 0, {}, Culvert{}});
  return site;
}();

StormStory story() {
  StormStory story;
  story.times_s = {0, 60, 120};
  story.leaving_m3_per_s = {0, 0.5, 0.2};
  PitStory sump{ItemId{1}, 98, 100};
  sump.samples = {{0, 98, 0, 0}, {60, 99.5, 0.02, 0.001}, {120, 99, 0.01, 0.005}};
  story.pits = {sump, {ItemId{7}, 97, 99}};
  story.culverts = {{ItemId{2}, {0, 0.3, 0.1}}};
  return story;
}

}  // namespace

TEST_CASE("A storm's curves are what its samples tell, pit by pit and pipe by pipe", "[storm][drain]") {
  const auto depths = storm_curves(yard, story(), CurvesOf::pit_depths);
  REQUIRE(depths.size() == 2);
  CHECK(depths[0].name == "Sump");
  CHECK(depths[0].values == std::vector<double>{0, 1.5, 1});
  CHECK(depths[0].rim_height == 2.0);
  CHECK(depths[0].most() == 1.5);
  CHECK(depths[1].name == "item 7, which is gone");
  CHECK(depths[1].most() == 0);
  const auto pipes = storm_curves(yard, story(), CurvesOf::pipe_flows);
  REQUIRE(pipes.size() == 1);
  CHECK(pipes[0].name == "Pipe");
  CHECK(pipes[0].most() == 0.3);
  CHECK(storm_curves(yard, story(), CurvesOf::leaving).front().most() == 0.5);
  CHECK(story().pits[0].highest_inflow_m3_per_s() == 0.02);
}

TEST_CASE("A pump has a curve where it ran", "[storm][drain]") {
  StormStory told = story();
  CHECK(storm_curves(yard, told, CurvesOf::pit_flows).size() == 2);
  told.pits[0].pumped_m3 = 1;
  const auto flows = storm_curves(yard, told, CurvesOf::pit_flows);
  REQUIRE(flows.size() == 3);
  CHECK(flows[0].name == "into Sump");
  CHECK(flows[1].name == "pump of Sump");
  CHECK(flows[1].most() == 0.005);
}
