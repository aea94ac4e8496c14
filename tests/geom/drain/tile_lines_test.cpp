#include "geom/drain/tile_lines.hpp"

#include <catch2/catch.hpp>

#include "geom/drain/channel.hpp"
#include "geom/drain/storm/tile_water.hpp"
#include "geom/drain/yard_flow.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

Site level_yard() {
  Site site;
  site.ground.levels = ground_of(60, 60, 1, [](SitePoint) { return 100.0; });
  return site;
}

ItemId add(Site& site, Thing thing) {
  site.items.push_back({next_id(site), "", 0, {}, std::move(thing)});
  return site.items.back().id;
}

TileSystem system_of(const Site& site) { return tile_system(site, design_surface(site)); }

/// A 6 in pipe, 30 m long at 1 %.
constexpr TilePipe six_inch{0.1524, 30, 100, 99.7, 0.013};

}  // namespace

// FHWA HEC-22 4th ed., equation 4.1: a full pipe's flow is A R^(2/3) S^(1/2) / n. Its ends take a part of the head, which
// fades as the pipe grows longer.
TEST_CASE("A long tile line carries what Manning says of a full pipe on its slope") {
  const TilePipe line{0.3, 20000, 200, 100, 0.013};
  const UniformFlow full = flow_at_depth(Pipe{0.3, 100.0 / 20000, 0.013}, 0.3);
  CHECK(tile_m3_per_s(line, 0, 0) == Approx(full.flow_m3_per_s).epsilon(0.001));
}

// HEC-22 4th ed., chapter 9: head lost = (entrance + exit + friction) V^2 / 2g, with 0.5 and 1 of the square for the ends and
// 19.63 n^2 L / R^1.33 in SI for the barrel.
TEST_CASE("A short tile line loses head at its ends too") {
  const double flow = tile_m3_per_s(six_inch, 0, 0), area_m2 = 3.14159265 * 0.1524 * 0.1524 / 4, speed = flow / area_m2;
  const double lost_m = (1.5 + 19.63 * 0.013 * 0.013 * 30 / std::pow(0.1524 / 4, 1.333)) * speed * speed / 19.62;
  CHECK(lost_m == Approx(0.3).epsilon(0.002));
}

TEST_CASE("A tile line carries more under water and nothing against it") {
  const double free = tile_m3_per_s(six_inch, 0, 0);
  CHECK(tile_m3_per_s(six_inch, 101.0524, 0) == Approx(free * std::sqrt(1.2 / 0.3)));
  CHECK(tile_m3_per_s(six_inch, 0, 99.8524 + 0.15) == Approx(free * std::sqrt(0.5)));
  CHECK(tile_m3_per_s(six_inch, 0, 100.2) == 0);
}

TEST_CASE("What is drawn on a tile line runs into it, and each line comes after those that run into it") {
  Site site = level_yard();
  const ItemId main = add(site, TileLine{.path = {{10, 40}, {10, 5}}});
  const ItemId side = add(site, TileLine{.path = {{40, 30}, {10.4, 30}}});
  const ItemId basin = add(site, CatchBasin{.at = {40.3, 30.2}});
  const ItemId trench = add(site, TrenchDrain{.path = {{20, 39}, {10.2, 39}}});
  const ItemId bin = add(site, Bin{.at = {30, 50}});
  add(site, Downspout{.at = {10, 20}, .of = bin, .share_ratio = 0.5});
  const TileSystem tiles = system_of(site);
  REQUIRE(tiles.lines.size() == 2);
  CHECK(tiles.lines[0].item == side);
  CHECK(tiles.lines[0].end == TileEnd::line);
  CHECK(tiles.lines[0].into == main);
  CHECK(tiles.lines[0].line == 1);
  CHECK(tiles.lines[1].end == TileEnd::ground);
  REQUIRE(tiles.inlets.size() == 2);
  CHECK(tiles.inlets[0].item == basin);
  CHECK(tiles.inlets[0].line == 0);
  CHECK(tiles.inlets[1].item == trench);
  CHECK(tiles.inlets[1].line == 1);
  REQUIRE(tiles.roofs.size() == 1);
  CHECK(tiles.roofs[0].roof == bin);
  CHECK(tiles.roofs[0].line == 1);
  CHECK(tiles.left_out.empty());
}

TEST_CASE("A tile line ends in a pit, in a receiving ditch, on the ground or beyond it") {
  Site site = level_yard();
  const ItemId pit = add(site, yardwright::Pit{.at = {20, 10}});
  const ItemId ditch = add(site, ReceivingDitch{.path = {{0, 3}, {60, 3}}, .width_m = 2, .water_depth_m = 0.4});
  add(site, TileLine{.path = {{20, 40}, {20, 10}}});
  add(site, TileLine{.path = {{30, 40}, {30, 4.5}}, .end_depth_m = 1, .tailwater_m = 0.1});
  add(site, TileLine{.path = {{40, 40}, {40, 20}}, .start_depth_m = 0.5, .end_depth_m = 1, .tailwater_m = 0.1});
  add(site, TileLine{.path = {{50, 40}, {70, 40}}});
  const TileSystem tiles = system_of(site);
  REQUIRE(tiles.lines.size() == 4);
  CHECK(tiles.lines[0].into == pit);
  CHECK(tiles.lines[1].into == ditch);
  CHECK(tiles.lines[1].tailwater_level_m == Approx(100.4));
  CHECK(tiles.lines[2].end == TileEnd::ground);
  CHECK(tiles.lines[2].tailwater_level_m == Approx(99.1));
  CHECK(tiles.lines[3].end == TileEnd::beyond);
}

TEST_CASE("What cannot carry water is named, with why") {
  Site site = level_yard();
  add(site, CatchBasin{.at = {5, 5}});
  add(site, TileLine{.path = {{20, 40}, {20, 10}}, .start_depth_m = 1, .end_depth_m = 0.5});
  add(site, TileLine{.path = {{30, 40}, {40, 40}}});
  add(site, TileLine{.path = {{40, 40}, {30, 40}}});
  add(site, Downspout{.at = {50, 50}});
  const TileSystem tiles = system_of(site);
  REQUIRE(tiles.left_out.size() == 4);
  CHECK(tiles.left_out[3].why.find("no roof") != std::string::npos);
  CHECK(tiles.left_out[0].why.find("rises") != std::string::npos);
  CHECK(tiles.left_out[1].why.find("come back to it") != std::string::npos);
  CHECK(tiles.left_out[2].why.find("no tile line runs under it") != std::string::npos);
}

// By hand: the side line can take 3 of 4, the main then has 3 + 5 = 8 and takes 4 of them, half of each.
TEST_CASE("A full tile line takes the same share of all that runs into it") {
  const double step_s = 10, per_s = tile_m3_per_s(six_inch, 0, 0);
  std::vector<TileRun> lines(2);
  lines[0].pipe = lines[1].pipe = six_inch;
  lines[0].end = TileEnd::line;
  lines[0].line = 1;
  const double most_m3 = per_s * step_s;
  const storm::TileShares shares = storm::tile_shares(lines, {most_m3 / 0.75, most_m3}, {{0, 0}, {0, 0}}, 1, step_s);
  CHECK(shares.of_line[0] == Approx(0.75 * 0.5));
  CHECK(shares.of_line[1] == Approx(0.5));
  CHECK(shares.out_m3[1] == Approx(most_m3));
  CHECK(shares.out_m3[0] == Approx(most_m3 / 2));
}

TEST_CASE("Water on the plan runs through a catch basin to the outlet of its tile line") {
  Site site;
  site.ground.levels = ground_of(60, 60, 1, [](SitePoint at) {
    return 100 + 0.02 * at.y - std::max(0.0, 0.5 * (1 - distance(at, {30, 30}) / 12));
  });
  CHECK_FALSE(yard_flow(site, design_surface(site)).depressions.empty());
  add(site, CatchBasin{.at = {30, 30}});
  add(site, TileLine{.path = {{30, 30}, {30, 2}}});
  const Flow flow = yard_flow(site, design_surface(site));
  CHECK(flow.depressions.empty());
  REQUIRE(flow.links.size() == 1);
  CHECK(flow.receiver[static_cast<std::size_t>(flow.links[0].from)] == flow.links[0].to);
  CHECK(flow.links[0].to / 60 <= 2);
}
