#include "geom/drain/flow.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <numeric>

#include "geom/drain/hollows.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

double sum_of_fill_m(const Flow& flow) {
  double sum_m = 0;
  for (std::size_t i = 0; i < flow.level_m.size(); ++i) sum_m += flow.filled_m[i] - flow.level_m[i];
  return sum_m;
}

/// Cells above by walking down from every cell, with a limit that a ring would break.
std::vector<std::int32_t> walked_cells_above(const Flow& flow) {
  std::vector<std::int32_t> above(flow.level_m.size(), 0);
  for (std::size_t i = 0; i < flow.level_m.size(); ++i) {
    std::size_t steps = 0;
    for (Cell cell = static_cast<Cell>(i); cell != outside; cell = flow.receiver[static_cast<std::size_t>(cell)]) {
      ++above[static_cast<std::size_t>(cell)];
      REQUIRE(++steps <= flow.level_m.size());
    }
  }
  return above;
}

}  // namespace

TEST_CASE("A closed ring fills to its rim", "[drain]") {
  const LevelGrid ring =
      terrain({"0 0 0 0 0 0 0 0 0 0", "0 0 0 0 0 0 0 0 0 0", "0 2 2 2 2 0 0 0 0 0", "0 2 0 0 2 2 2 2 0 0",
               "0 2 2 2 2 0 0 2 0 0", "0 0 2 0 2 0 0 2 0 0", "0 0 2 2 2 0 0 2 0 0", "0 0 0 0 2 2 2 2 0 0",
               "0 0 0 0 0 0 0 0 0 0", "0 0 0 0 0 0 0 0 0 0"},
              3);
  // A published library's test terrain and its output: 9 cells filled by 2 each (read).
  const Flow flow = flow_over(ring);
  CHECK(sum_of_fill_m(flow) == 18);
  const auto filled =
      std::count_if(flow.depression.begin(), flow.depression.end(), [](auto d) { return d != no_depression; });
  CHECK(filled == 9);
  CHECK(std::ranges::all_of(flow.depressions,
                            [](const Depression& d) { return d.spill_level_m == 2 && d.depth_m == 2; }));
}

TEST_CASE("A bowl with two pits holds 111 to its rim", "[drain]") {
  // A published library's test terrain (read): merged volume 111 over 36 cells, 36 of 100 cells drain into the bowl.
  const Flow flow = flow_over(two_pit_bowl());
  REQUIRE(flow.depressions.size() == 1);
  CHECK(flow.depressions[0].volume_m3 == Approx(111));
  CHECK(flow.depressions[0].cells == 36);
  CHECK(flow.depressions[0].depth_m == 8);
}

TEST_CASE("A hollow that several cells join to its spill is one hollow", "[drain]") {
  // From the real terrain of tests/independent: the spill at 515 touches both 511 and 507.
  const Flow flow =
      flow_over(terrain({"551 538 520 514 516", "540 530 511 507 522", "518 509 511 526 547", "523 522 531 550 566"}));
  REQUIRE(flow.depressions.size() == 1);
  CHECK(flow.depressions[0].cells == 4);
  CHECK(flow.depressions[0].volume_m3 == Approx(3 + 7 + 5 + 3));
}

TEST_CASE("A hollow holds what its levels say", "[drain]") {
  // 5 cells whose levels sum to 10: 10 to level 4, 5 to level 3, 8 of water stand at 3.6 (published library test, read).
  const Flow flow = flow_over(terrain({"9 9 9 9 9 9 9", "9 2 2 2 2 2 4", "9 9 9 9 9 9 9"}));
  REQUIRE(flow.depressions.size() == 1);
  CHECK(flow.depressions[0].volume_m3 == Approx(10));
  Hollows hollows{flow, 0};
  const Cell lowest = flow.depressions[0].lowest;
  CHECK(hollows.level_m(lowest) == 2);
  CHECK(hollows.pour(hollows.innermost_at(lowest), 5) == 0);
  CHECK(hollows.level_m(lowest) == Approx(3));
  CHECK(hollows.pour(hollows.innermost_at(lowest), 3) == 0);
  CHECK(hollows.level_m(lowest) == Approx(3.6));
}

TEST_CASE("The teaching terrain drains and gathers as its tables say", "[drain]") {
  const LevelGrid levels = terrain({"78 72 69 71 58 49", "74 67 56 49 46 50", "69 53 44 37 38 48", "64 58 55 22 31 24",
                                    "68 61 47 21 16 19", "74 53 34 12 11 12"});
  // Wide use since the late 1980s; cells above, the cell itself left out (from memory, recomputed).
  const auto above =
      numbers({"0 0 0 0 0 0", "0 1 1 2 2 0", "0 3 7 5 4 0", "0 0 0 20 0 1", "0 0 0 1 24 0", "0 2 4 7 35 1"});
  const Flow flow = flow_over(levels);
  for (std::size_t i = 0; i < above.size(); ++i) CHECK(flow.cells_above[i] - 1 == above[i]);
}

TEST_CASE("A bank across a channel ponds water to its top, and a pipe under it none", "[drain]") {
  // 10-ft cells falling 0.1 ft each, one bank cell 3.0 ft over the bed: 2.9 ft deep, 29 cells, 4,350 ft3 (computed).
  constexpr double ft = 0.3048;
  constexpr int length = 60, bank = 40;
  std::vector<float> levels(3 * length, static_cast<float>(100 * ft));
  for (int i = 0; i < length; ++i)
    levels[length + i] = static_cast<float>((10 - 0.1 * i + (i == bank ? 3.0 : 0.0)) * ft);
  const LevelGrid channel{GridFrame{{0, 0}, 10 * ft, length, 3}, levels};
  const Flow flow = flow_over(channel);
  REQUIRE(flow.depressions.size() == 1);
  CHECK(flow.depressions[0].depth_m / ft == Approx(2.9).epsilon(1e-4));
  CHECK(flow.depressions[0].cells == 29);
  CHECK(flow.depressions[0].volume_m3 / (ft * ft * ft) == Approx(4350).epsilon(1e-4));
  const Flow piped = flow_over(channel, {{}, {{length + bank - 1, length + bank + 1}}});
  CHECK(piped.depressions.empty());
  CHECK(piped.receiver[length + bank - 1] == length + bank + 1);
}

TEST_CASE("A cone pond has the volume of a cone", "[drain]") {
  // 2 % cone, 0.5 ft deep: radius 25 ft, 327.2 ft3 = pi d^3 / (3 s^2), here in feet on a 1-ft grid (computed).
  constexpr int size = 81, middle = size / 2;
  std::vector<float> levels;
  for (int i = 0; i < size * size; ++i) {
    const double away = std::hypot(i % size - middle, i / size - middle);
    levels.push_back(static_cast<float>(away <= 25 ? 0.02 * away : 0.5));
  }
  const Flow flow = flow_over(LevelGrid{GridFrame{{0, 0}, 1, size, size}, levels});
  REQUIRE(flow.depressions.size() == 1);
  CHECK(flow.depressions[0].volume_m3 == Approx(327.2).epsilon(0.01));
  CHECK(flow.depressions[0].depth_m == Approx(0.5));
}

TEST_CASE("On rough ground the fill equals the textbook's cell by cell and filling again changes nothing", "[drain]") {
  for (const unsigned seed : {1U, 2U, 3U, 4U}) {
    INFO("seed " << seed);
    const LevelGrid ground = rough_ground(97, 61, seed);
    const Flow flow = flow_over(ground);
    REQUIRE(flow.filled_m == textbook_filled_m(ground));
    REQUIRE(flow_over(LevelGrid{ground.frame(), flow.filled_m}).filled_m == flow.filled_m);
    REQUIRE(flow_over(LevelGrid{ground.frame(), flow.filled_m}).depressions.empty());
  }
}

TEST_CASE("Every cell drains to the edge, never upward, and the counts equal a walk from every cell", "[drain]") {
  const Flow flow = flow_over(rough_ground(80, 50, 7));
  REQUIRE(flow.cells_above == walked_cells_above(flow));
  std::int32_t out = 0;
  for (std::size_t i = 0; i < flow.receiver.size(); ++i) {
    const Cell below = flow.receiver[i];
    if (below == outside)
      out += flow.cells_above[i];
    else
      REQUIRE(flow.filled_m[static_cast<std::size_t>(below)] <= flow.filled_m[i]);
  }
  CHECK(out == static_cast<std::int32_t>(flow.receiver.size()));
}

TEST_CASE("The cells of a depression add up to it", "[drain]") {
  const Flow flow = flow_over(rough_ground(70, 70, 11));
  REQUIRE_FALSE(flow.depressions.empty());
  for (std::size_t d = 0; d < flow.depressions.size(); ++d) {
    const Depression& pond = flow.depressions[d];
    const auto number = static_cast<std::int32_t>(d);
    REQUIRE(std::ranges::count(flow.depression, number) == pond.cells);
    REQUIRE(pond.spill_level_m - flow.level_m[static_cast<std::size_t>(pond.lowest)] == Approx(pond.depth_m));
    double filled_m3 = 0;
    for (std::size_t i = 0; i < flow.depression.size(); ++i) {
      if (flow.depression[i] == number) filled_m3 += static_cast<double>(flow.filled_m[i]) - flow.level_m[i];
    }
    REQUIRE(filled_m3 == Approx(pond.volume_m3));
  }
}

TEST_CASE("A catchment has as many cells as its outlet counts, and the longest way starts within it", "[drain]") {
  const Flow flow = flow_over(rough_ground(60, 60, 5));
  const auto most = std::ranges::max_element(flow.cells_above) - flow.cells_above.begin();
  const std::vector<Cell> outlet{static_cast<Cell>(most)};
  const auto in = catchment(flow, outlet);
  CHECK(static_cast<std::int32_t>(in.size()) == flow.cells_above[static_cast<std::size_t>(most)]);
  const auto longest = longest_path(flow, in, outlet);
  REQUIRE(longest.size() > 1);
  CHECK(longest.back() == outlet[0]);
  CHECK(std::ranges::count(in, longest.front()) == 1);
  CHECK(flow_path(flow, longest.front()).back() != outside);
}

TEST_CASE("An open pit takes the water around it and is never filled", "[drain]") {
  const LevelGrid bowl = two_pit_bowl();
  const auto deepest = static_cast<Cell>(bowl.frame().offset({7, 2}));
  const Flow flow = flow_over(bowl, {{deepest}, {}});
  REQUIRE(flow.depressions.size() == 1);
  CHECK(flow.depressions[0].volume_m3 == Approx(2));
  CHECK(std::ranges::max(flow.cells_above) == 36);
}

TEST_CASE("Level ground, a single cell and no cells all have an answer", "[drain]") {
  const Flow level = flow_over(LevelGrid{GridFrame{{0, 0}, 1, 9, 7}, std::vector<float>(63, 5)});
  CHECK(level.depressions.empty());
  CHECK(level.cells_above == walked_cells_above(level));
  CHECK(flow_over(LevelGrid{GridFrame{{0, 0}, 1, 1, 1}, {3}}).cells_above == std::vector<std::int32_t>{1});
  CHECK(flow_over(LevelGrid{}).receiver.empty());
}
