#include "geom/drain/pipe_catchments.hpp"

#include <catch2/catch.hpp>

#include "geom/drain/yard_flow.hpp"
#include "geom/io/catalogs.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

/// A valley along x = 50 that falls 2 % to the south; with a bank across it a culvert must pass.
Site valley() {
  Site site;
  site.ground.levels = ground_of(100, 100, 1, [](SitePoint at) {
    return 100 + 0.02 * at.y + 0.02 * std::abs(at.x - 50) + (std::abs(at.y - 40) < 3 ? 0.8 : 0.0);
  });
  return site;
}

std::vector<PipeCatchment> asked(const Site& site) {
  const DesignSurface surface = design_surface(site);
  return pipe_catchments(site, surface, shipped_catalogs(), yard_flow(site, surface));
}

}  // namespace

TEST_CASE("A culvert through a bank takes the rain of the valley behind it", "[drain]") {
  Site site = valley();
  CHECK(asked(site).empty());
  site.items.push_back({{1}, "", 0, {}, Culvert{.path = {{50, 44}, {50, 36}}, .start_depth_m = 0}});
  const auto pipes = asked(site);
  REQUIRE(pipes.size() == 1);
  CHECK(pipes[0].item == ItemId{1});
  CHECK(pipes[0].water.area_m2 == Approx(100 * 57).epsilon(0.03));  // all that lies north of the bank's crest
  REQUIRE(pipes[0].water.covers.size() == 1);
  CHECK(pipes[0].water.covers[0].curve_number == pipes[0].water.curve_number);
  REQUIRE_FALSE(pipes[0].water.concentration.segments.empty());
  CHECK(pipes[0].water.concentration.segments.back().ends.y == Approx(44).margin(2));
}

TEST_CASE("A basin on a tile line is told, one without is not, and a culvert that rises is not", "[drain]") {
  Site site = valley();
  site.items.push_back({{1}, "", 0, {}, CatchBasin{.at = {50, 50}}});
  CHECK(asked(site).empty());
  site.items.push_back({{2}, "", 0, {}, TileLine{.path = {{50, 50}, {50, 10}}}});
  REQUIRE(asked(site).size() == 1);
  CHECK(asked(site)[0].item == ItemId{1});
  site.items.push_back({{3}, "", 0, {}, Culvert{.path = {{50, 36}, {50, 70}}}});
  CHECK(asked(site).size() == 1);
}

TEST_CASE("Where the yard's cover is not known no catchment is told", "[drain]") {
  Site site = valley();
  site.items.push_back({{1}, "", 0, {}, Culvert{.path = {{50, 44}, {50, 36}}, .start_depth_m = 0}});
  site.storm.cover = "lichen";
  CHECK(asked(site).empty());
}
