#include <catch2/catch.hpp>
#include <cstdio>
#include <random>

#include "geom/check/live_check.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/site/footprint.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;

namespace {

constexpr int columns = 72, rows = 54;

SitePoint random_place(std::mt19937& random) {
  return {2 + static_cast<double>(random() % 680) / 10, 2 + static_cast<double>(random() % 500) / 10};
}

SitePath square_around(SitePoint at, double side_m) {
  return {at, {at.x + side_m, at.y}, {at.x + side_m, at.y + side_m}, {at.x, at.y + side_m}};
}

Site small_yard(std::mt19937& random) {
  Site site;
  site.ground.levels = drain::rough_ground(columns, rows, static_cast<unsigned>(random()));
  const auto add = [&](Thing thing) { site.items.push_back({next_id(site), "", 0, {}, std::move(thing)}); };
  add(Berm{.path = {{13, 13}, {22, 19}}});
  add(Pad{.outline = square_around({43, 28}, 5), .level_m = 300.5});
  add(Swale{.path = {{14, 44}, {30, 42}}});
  add(Bin{.at = {45, 30}, .diameter_m = 4});
  add(Pit{.at = {27, 32}});
  add(Culvert{});
  std::get<Culvert>(site.items.back().thing).path = {{18, 13}, {18, 20}};
  add(ReceivingDitch{.path = {{5, 48}, {60, 50}}});
  add(TileLine{.path = {{30, 36}, {50, 47}}});
  add(CatchBasin{.at = {30, 36}});
  return site;
}

void raise_a_patch(Site& site, std::mt19937& random) {
  std::vector<float> levels_m = site.ground.levels.values();
  const auto column = static_cast<int>(random() % (columns - 3)), row = static_cast<int>(random() % (rows - 3));
  const float change_m = static_cast<float>(static_cast<int>(random() % 81) - 40) / 100;
  for (int i = 0; i < 9; ++i) levels_m[static_cast<std::size_t>((row + i / 3) * columns + column + i % 3)] += change_m;
  site.ground.levels = {site.ground.levels.frame(), std::move(levels_m)};
}

/// Something about the rain, the ground or what stands on it, or (which no water reads) a name.
void edit(Site& site, std::mt19937& random) {
  const double some = 0.1 + static_cast<double>(random() % 10) / 10;
  Item& item = site.items[random() % site.items.size()];
  switch (random() % 6) {
    case 0: return raise_a_patch(site, random);
    case 1: site.storm.rain_m = some / 5; return;
    case 2: item.name += "x"; return;
    case 3:
      if (Berm* berm = std::get_if<Berm>(&item.thing)) berm->height_m = some;
      if (Pad* pad = std::get_if<Pad>(&item.thing)) pad->level_m = 299.5 + some;
      if (Swale* swale = std::get_if<Swale>(&item.thing)) swale->start_depth_m = some / 2;
      return;
    case 4:
      if (Berm* berm = std::get_if<Berm>(&item.thing)) berm->path = {random_place(random), random_place(random)};
      if (Pad* pad = std::get_if<Pad>(&item.thing)) pad->outline = square_around(random_place(random), 2 + some);
      return;
    default: item.thing = moved(item.thing, {some - 0.5, 0.5 - some});
  }
}

void require_same_flow(const drain::Flow& live, const drain::Flow& whole) {
  REQUIRE(live.level_m == whole.level_m);
  REQUIRE(live.filled_m == whole.filled_m);
  REQUIRE(live.receiver == whole.receiver);
  REQUIRE(live.steps == whole.steps);
  REQUIRE(live.cells_above == whole.cells_above);
  REQUIRE(live.depression == whole.depression);
  REQUIRE(live.depressions == whole.depressions);
  REQUIRE(live.links == whole.links);
}

}  // namespace

TEST_CASE("After each of a thousand edits the live flow of water equals the whole one cell by cell", "[drain]") {
  // The live check finds the flow anew where an edit that water reads can reach it, and keeps its answer after any other.
  int kept = 0, in_part = 0;
  for (const unsigned seed : {1U, 2U, 3U, 4U, 5U, 6U, 7U, 8U, 9U, 10U}) {
    std::mt19937 random{seed};
    Site site = small_yard(random);
    LiveCheck live{shipped_catalogs()};
    live.ask(site);
    for (int i = 0; i < 100; ++i) {
      INFO("seed " << seed << ", edit " << i);
      const int asked = live.times_asked(Question::drain);
      edit(site, random);
      live.ask(site);
      kept += live.times_asked(Question::drain) == asked;
      const drain::Answer whole = drain::ask(site, design_surface(site), shipped_catalogs(), {MendSearch{false}});
      const drain::Answer& now = *live.answers().drain;
      require_same_flow(now.flow, whole.flow);
      in_part += live.times_asked(Question::drain) > asked && now.flow.work.filled < whole.flow.work.filled;
      REQUIRE(now.findings == whole.findings);
    }
  }
  std::printf("a thousand edits: the answer on water was kept after %d of them, made in part after %d\n", kept,
              in_part);
  CHECK(kept > 0);
  CHECK(kept < 900);
  CHECK(in_part > (1000 - kept) * 4 / 5);
}
