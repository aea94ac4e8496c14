#include <catch2/catch.hpp>
#include <random>

#include "geom/drain/storm/storm.hpp"
#include "geom/io/catalogs.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain::storm;

namespace {

/// Level gravel 60 m square at a metre a cell, with a round hollow 0.5 m deep in its middle.
Site hollow_yard() {
  Site site;
  site.ground.levels = drain::ground_of(60, 60, 1, [](SitePoint at) {
    return 100 - std::max(0.0, 0.5 * (1 - distance(at, {30, 30}) / 12));
  });
  site.storm.rain_m = 5 * 0.0254;
  site.storm.cover = "gravel";
  return site;
}

ItemId add(Site& site, Thing thing) {
  site.items.push_back({next_id(site), "", 0, {}, std::move(thing)});
  return site.items.back().id;
}

StormStory story_of(const Site& site, Mishap mishap = Mishap::none) {
  StormOptions options;
  options.start_s = 11.5 * 3600;
  options.length_s = 3600;
  options.mishap = mishap;
  const auto story = run_storm(site, design_surface(site), shipped_catalogs(), options);
  REQUIRE(story);
  CHECK(story->balance.error_ratio() < 1e-9);
  return *story;
}

double deepest_m(const StormStory& story, SitePoint at) { return level_at(story.deepest_m, at); }

Site drained_yard() {
  Site site = hollow_yard();
  add(site, CatchBasin{.at = {30, 30}});
  add(site, TileLine{.path = {{30, 30}, {30, -5}}, .diameter_m = 0.3, .start_depth_m = 0.5, .end_depth_m = 1.5});
  return site;
}

}  // namespace

TEST_CASE("A catch basin with its tile line keeps a hollow lower than it stands without", "[storm]") {
  const StormStory without = story_of(hollow_yard()), with = story_of(drained_yard());
  CHECK(deepest_m(with, {30, 30}) < 0.8 * deepest_m(without, {30, 30}));
  REQUIRE(with.tiles.size() == 1);
  REQUIRE(with.grates.size() == 1);
  CHECK(with.tiles[0].highest_m3_per_s > 0);
  // What the grate took in came out of the pipe, sample by sample.
  for (std::size_t i = 0; i < with.times_s.size(); ++i)
    CHECK(with.tiles[0].flow_m3_per_s[i] == Approx(with.grates[0].flow_m3_per_s[i]).margin(1e-12));
  CHECK(with.balance.left_m3 > without.balance.left_m3);
}

TEST_CASE("A full tile line leaves a hollow as if it had none", "[storm]") {
  const StormStory without = story_of(hollow_yard()), full = story_of(drained_yard(), Mishap::tiles_full);
  // The hollow was empty at the beginning, because its basin had drained it.
  CHECK(full.tiles[0].highest_m3_per_s == 0);
  CHECK(full.tiles[0].full_s > 0);
  CHECK(full.balance.on_ground_m3 <= without.balance.on_ground_m3);
}

TEST_CASE("A tile line that ends in a pit fills it, and a downspout sends it the rain of a roof", "[storm]") {
  Site site = hollow_yard();
  const ItemId bin = add(site, Bin{.at = {30, 52}, .diameter_m = 10});
  add(site, Pit{.at = {10, 10}, .body = {.rim_height_m = 0.5}});
  const double before_m3 = story_of(site).pits[0].in_m3;
  add(site, TileLine{.path = {{30, 46}, {10, 46}, {10, 10}}, .start_depth_m = 0.3, .end_depth_m = 1});
  add(site, Downspout{.at = {30, 46}, .of = bin});
  const StormStory story = story_of(site);
  // Rain of the hour on the roof, less what a roof keeps (curve number 98), by the closed form of the NRCS.
  CHECK(story.pits[0].in_m3 > before_m3 + 3);
  CHECK(story.tiles[0].highest_m3_per_s > 0);
}

TEST_CASE("A receiving ditch takes the water that comes to it", "[storm]") {
  Site site = hollow_yard();
  add(site, ReceivingDitch{.path = {{30, 25}, {30, 35}}, .width_m = 2, .water_depth_m = 0.05});
  const StormStory story = story_of(site);
  CHECK(deepest_m(story, {30, 30}) < 0.1);
}

TEST_CASE("A curb and a retaining wall uphill of a hollow turn the water that would run into it", "[storm]") {
  const SitePath uphill{{2, 46}, {50, 46}};
  Site site = hollow_yard();
  site.ground.levels = drain::ground_of(60, 60, 1, [](SitePoint at) {
    return 100 + 0.03 * at.y - std::max(0.0, 0.8 * (1 - distance(at, {30, 30}) / 12));
  });
  const StormStory open = story_of(site);
  Site walled = site;
  add(site, Curb{.path = uphill, .height_m = 0.3});
  add(walled, RetainingWall{.path = uphill});
  for (const Site& turned : {site, walled}) {
    const StormStory story = story_of(turned);
    CHECK(deepest_m(story, {30, 30}) < deepest_m(open, {30, 30}) - 0.01);
    CHECK(deepest_m(story, {30, 47}) > deepest_m(open, {30, 47}) + 0.02);
  }
}

TEST_CASE("Water through tiles, ditches and downspouts is all accounted for on random yards", "[storm]") {
  const unsigned seed = 711;
  INFO("seed " << seed);
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> place(5, 55), share(0, 1);
  for (int i = 0; i < 5; ++i) {
    Site site = hollow_yard();
    const SitePoint end{place(random), place(random)}, start{place(random), place(random)};
    add(site,
        Pit{.at = {place(random), 8}, .body = {.pump_m3_per_s = 0.002, .pump_shutoff_m = 6, .pump_discharge_m = 1}});
    add(site, TileLine{.path = {{30, 30}, end}, .start_depth_m = 0.2, .end_depth_m = 1});
    add(site, TileLine{.path = {start, {30, 30}}, .start_depth_m = 0.1, .end_depth_m = 0.5});
    add(site, CatchBasin{.at = {30, 30}, .clogged_ratio = share(random)});
    add(site, CatchBasin{.at = start});
    const ItemId bin = add(site, Bin{.at = {place(random), 50}});
    add(site, Downspout{.at = start, .of = bin, .share_ratio = share(random)});
    add(site, ReceivingDitch{.path = {{2, 2}, {2, place(random)}}});
    const WaterBalance water = story_of(site).balance;
    CHECK(water.error_ratio() < 1e-9);
    CHECK(water.rain_m3 > 0);
  }
}
