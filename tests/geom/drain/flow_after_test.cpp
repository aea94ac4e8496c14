#include "geom/drain/flow_after.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cstdio>
#include <random>

#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

struct Ground {
  LevelGrid levels;
  FlowOptions options;
};

Cell some_cell(const GridFrame& frame, std::mt19937& random) { return static_cast<Cell>(random() % frame.cells()); }

/// A block of cells raised, lowered or made level: banks, holes, pads; where it is level there are flats.
void shape_a_block(Ground& ground, std::mt19937& random) {
  const GridFrame& frame = ground.levels.frame();
  std::vector<float> levels_m = ground.levels.values();
  const CellIndex from = frame.cell_at_offset(static_cast<std::size_t>(some_cell(frame, random)));
  const int wide = 1 + static_cast<int>(random() % 12), high = 1 + static_cast<int>(random() % 5);
  const bool level = random() % 3 == 0;
  const float change_m = static_cast<float>(static_cast<int>(random() % 301) - 150) / 100;
  const float level_m = ground.levels.at(from) + change_m / 4;
  for (int row = from.row; row < std::min(from.row + high, frame.rows); ++row) {
    for (int column = from.column; column < std::min(from.column + wide, frame.columns); ++column) {
      float& here_m = levels_m[frame.offset({column, row})];
      here_m = level ? level_m : here_m + change_m;
    }
  }
  ground.levels = {frame, std::move(levels_m)};
}

void edit_pipes(Ground& ground, std::mt19937& random) {
  auto& links = ground.options.links;
  if (links.size() > 6 || (!links.empty() && random() % 3 == 0)) {
    links.erase(links.begin() + static_cast<std::ptrdiff_t>(random() % links.size()));
    return;
  }
  const Link link{some_cell(ground.levels.frame(), random), some_cell(ground.levels.frame(), random)};
  if (link.from != link.to) links.push_back(link);
}

void edit_sinks(Ground& ground, std::mt19937& random) {
  auto& sinks = ground.options.sinks;
  if (sinks.size() > 4 || (!sinks.empty() && random() % 3 == 0))
    sinks.erase(sinks.begin() + static_cast<std::ptrdiff_t>(random() % sinks.size()));
  else
    sinks.push_back(some_cell(ground.levels.frame(), random));
}

void edit(Ground& ground, std::mt19937& random) {
  switch (random() % 6) {
    case 0: return edit_pipes(ground, random);
    case 1: return edit_sinks(ground, random);
    default: shape_a_block(ground, random);
  }
}

void require_same(const Flow& live, const Flow& whole) {
  REQUIRE(live.level_m == whole.level_m);
  REQUIRE(live.filled_m == whole.filled_m);
  REQUIRE(live.steps == whole.steps);
  REQUIRE(live.receiver == whole.receiver);
  REQUIRE(live.cells_above == whole.cells_above);
  REQUIRE(live.depression == whole.depression);
  REQUIRE(live.depressions == whole.depressions);
  REQUIRE(live.sinks == whole.sinks);
  REQUIRE(live.links == whole.links);
}

}  // namespace

TEST_CASE("After each of a thousand edits the flow made anew in part equals the whole one cell by cell", "[drain]") {
  int in_part = 0;
  double worked = 0, of_all = 0;
  for (const unsigned seed : {1U, 2U, 3U, 4U, 5U}) {
    std::mt19937 random{seed};
    Ground ground{rough_ground(90, 70, seed), {}};
    Flow live = flow_over(ground.levels);
    for (int i = 0; i < 200; ++i) {
      INFO("seed " << seed << ", edit " << i);
      edit(ground, random);
      live = flow_after(live, ground.levels, ground.options);
      require_same(live, flow_over(ground.levels, ground.options));
      const auto cells = static_cast<std::int32_t>(ground.levels.frame().cells());
      in_part += live.work.filled < cells;
      worked += live.work.filled + live.work.receivers + live.work.above + live.work.depressions;
      of_all += 4.0 * cells;
    }
    CHECK_FALSE(live.depressions.empty());
    CHECK(std::ranges::any_of(live.steps, [](std::int32_t steps) { return steps > 5; }));
  }
  std::printf("a thousand edits: %d found in part, %.1f %% of all cells worked on\n", in_part, 100 * worked / of_all);
  CHECK(in_part > 700);
  CHECK(worked < 0.3 * of_all);
}

TEST_CASE("An edit in one corner works on the cells there and below, however large the ground is", "[drain]") {
  for (const int side : {100, 200, 400}) {
    const LevelGrid before = rough_ground(side, side, 3);
    std::vector<float> levels_m = before.values();
    for (const int i : {0, 1, 2}) levels_m[before.frame().offset({20 + i, 20})] += 0.5F;
    const LevelGrid after{before.frame(), std::move(levels_m)};
    const Flow flow = flow_after(flow_over(before), after);
    require_same(flow, flow_over(after));
    INFO("side " << side);
    CHECK(flow.work.filled > 0);
    CHECK(flow.work.filled < 300);
    CHECK(flow.work.receivers < 300);
    CHECK(flow.work.above < 1000);
    CHECK(flow.work.depressions < 1000);
  }
}

TEST_CASE("Where nothing has become another no cell is worked on", "[drain]") {
  const LevelGrid ground = rough_ground(60, 40, 2);
  const FlowOptions options{{500}, {{900, 1500}}};
  const Flow flow = flow_after(flow_over(ground, options), ground, options);
  require_same(flow, flow_over(ground, options));
  CHECK(flow.work.filled + flow.work.receivers + flow.work.above + flow.work.depressions == 0);
}

TEST_CASE("After ground of another size, or changed all over, the whole flow is found", "[drain]") {
  const LevelGrid small = rough_ground(30, 30, 1), ground = rough_ground(60, 40, 2), other = rough_ground(60, 40, 3);
  require_same(flow_after(flow_over(small), ground), flow_over(ground));
  require_same(flow_after({}, ground), flow_over(ground));
  const Flow flow = flow_after(flow_over(ground), other);
  require_same(flow, flow_over(other));
  CHECK(flow.work.filled == 2400);
  CHECK(flow_after(flow_over(ground), LevelGrid{}).receiver.empty());
}

TEST_CASE("A lake that rises and falls as its one way out is dammed and opened is the one found whole", "[drain]") {
  // A round hollow with a rim 7 m from its middle, ground that falls away beyond, and a notch in the rim.
  const auto yard = [](double notch_m) {
    return ground_of(100, 100, 1, [=](SitePoint at) {
      const double away_m = std::hypot(at.x - 50.5, at.y - 50.5);
      if (std::abs(at.y - 50.5) < 0.1 && at.x > 50.5 && away_m > 4 && away_m < 12) return notch_m;
      return away_m < 7 ? 0.1 * away_m + 1 : 2.4 - 0.1 * away_m;
    });
  };
  const LevelGrid open = yard(1.3), dammed = yard(1.6);
  const Flow low = flow_over(open), high = flow_over(dammed);
  REQUIRE(low.depressions.size() == 1);
  REQUIRE(high.depressions.size() == 1);
  CHECK(high.depressions[0].volume_m3 > 2 * low.depressions[0].volume_m3);
  const Flow risen = flow_after(low, dammed), fallen = flow_after(high, open);
  require_same(risen, high);
  require_same(fallen, low);
  CHECK(risen.work.filled < 625);
  CHECK(fallen.work.filled < 625);
}
