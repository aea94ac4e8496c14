#include "geom/drain/hollows.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <numeric>

#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

std::vector<Cell> catchment_of_bowl(const Flow& flow) {
  std::vector<Cell> pond;
  for (std::size_t i = 0; i < flow.depression.size(); ++i) {
    if (flow.depression[i] == 0) pond.push_back(static_cast<Cell>(i));
  }
  return catchment(flow, pond);
}

Cell lowest_in(const Flow& flow, const Hollows& hollows, HollowIndex hollow) {
  Cell lowest = outside;
  for (std::size_t i = 0; i < flow.level_m.size(); ++i) {
    const auto cell = static_cast<Cell>(i);
    if (hollows.innermost_at(cell) == hollow &&
        (lowest == outside || flow.level_m[i] < flow.level_m[static_cast<std::size_t>(lowest)]))
      lowest = cell;
  }
  return lowest;
}

}  // namespace

TEST_CASE("A bowl with two pits is two hollows of 73 and 2 in one of 111", "[drain]") {
  // A published library's test terrain and its output (read).
  const Flow flow = flow_over(two_pit_bowl());
  const Hollows hollows{flow, 0};
  std::vector<double> holds;
  for (const Hollow& hollow : hollows.all()) holds.push_back(hollow.holds_m3);
  std::ranges::sort(holds);
  REQUIRE(holds.size() == 3);
  CHECK(holds[0] == Approx(2));
  CHECK(holds[1] == Approx(73));
  CHECK(holds[2] == Approx(111));
}

TEST_CASE("Rain on the bowl fills each pit by its own ground and spills from the full one into the other", "[drain]") {
  // Rain 1 brings 30 and 6 to the pits (read); the small one holds 2 and spills 4 over: 34 stand at 6.15789. Rain 3
  // fills both to one water at 8.91667; rain 4 fills it to the rim at 9 and 33 leave (computed).
  const Flow flow = flow_over(two_pit_bowl());
  const std::vector<Cell> ground = catchment_of_bowl(flow);
  struct Case {
    double rain_m, level_m, spilled_m3;
  };
  for (const Case& one : {Case{1, 6.15789, 0}, Case{3, 8.91667, 0}, Case{4, 9, 33}}) {
    Hollows hollows{flow, 0};
    CHECK(hollows.rain_on(ground, one.rain_m) == Approx(one.spilled_m3).margin(1e-9));
    CHECK(hollows.level_m(flow.depressions[0].lowest) == Approx(one.level_m).margin(1e-5));
  }
}

TEST_CASE("Until it spills over, a hollow's water stands at its own level", "[drain]") {
  const Flow flow = flow_over(two_pit_bowl());
  Hollows hollows{flow, 0};
  const auto small =
      static_cast<HollowIndex>(std::ranges::find(hollows.all(), 2.0, &Hollow::holds_m3) - hollows.all().begin());
  const auto large = hollows.all()[static_cast<std::size_t>(small)].spills_into;
  CHECK(hollows.pour(small, 1) == 0);
  const Cell in_small = lowest_in(flow, hollows, small), in_large = lowest_in(flow, hollows, large);
  CHECK(hollows.level_m(in_small) > flow.level_m[static_cast<std::size_t>(in_small)]);
  CHECK(hollows.level_m(in_large) == flow.level_m[static_cast<std::size_t>(in_large)]);
  CHECK(hollows.pour(small, 5) == 0);
  CHECK(hollows.level_m(in_small) == Approx(hollows.all()[static_cast<std::size_t>(small)].brim_m));
  CHECK(hollows.all()[static_cast<std::size_t>(large)].stands_m3 == Approx(4));
}

TEST_CASE("Whatever rains stands or leaves, the whole holds what the depression does, and order does not matter",
          "[drain]") {
  const Flow flow = flow_over(rough_ground(70, 70, 11));
  for (std::size_t d = 0; d < flow.depressions.size(); ++d) {
    const auto number = static_cast<std::int32_t>(d);
    Hollows forth{flow, number}, back{flow, number};
    REQUIRE(forth.all().back().holds_m3 == Approx(flow.depressions[d].volume_m3).margin(1e-9));
    const auto count = static_cast<HollowIndex>(forth.all().size());
    double out_forth = 0, out_back = 0;
    for (HollowIndex i = 0; i < count; ++i) {
      const double part = flow.depressions[d].volume_m3 * 0.7 / count;
      if (forth.all()[static_cast<std::size_t>(i)].is_innermost()) out_forth += forth.pour(i, part);
      if (back.all()[static_cast<std::size_t>(count - 1 - i)].is_innermost())
        out_back += back.pour(count - 1 - i, part);
    }
    CHECK(out_forth == Approx(out_back).margin(1e-9));
    for (HollowIndex i = 0; i < count; ++i) {
      CHECK(forth.all()[static_cast<std::size_t>(i)].stands_m3 ==
            Approx(back.all()[static_cast<std::size_t>(i)].stands_m3).margin(1e-9));
    }
  }
}
