#include "geom/clear/working_room.hpp"

#include <catch2/catch.hpp>
#include <random>

#include "tests/geom/clear/asked_yard.hpp"

using namespace yardwright;
using namespace yardwright::clear;

TEST_CASE("A strip runs until it meets something, and past what stands beside it") {
  const Pose face{{0, 0}, Bearing::degrees(90)};
  CHECK(free_depth_m(face, 2, Disc{{10, 0}, 3}) == Approx(7));
  CHECK(free_depth_m(face, 2, Disc{{10, 5}, 3}) == nothing_in_front);
  CHECK(free_depth_m(face, 2, Disc{{10, 3}, 3}) ==
        Approx(10 - std::sqrt(9.0 - 4.0)));  // the strip's edge meets the rim
  CHECK(free_depth_m(face, 2, Disc{{-10, 0}, 3}) == nothing_in_front);
  CHECK(free_depth_m(face, 2, rectangle({{10, 0}, Bearing::degrees(0)}, 40, 4)) == Approx(8));
  CHECK(free_depth_m(face, 2, rectangle({{-10, 0}, Bearing::degrees(0)}, 40, 4)) == nothing_in_front);
  CHECK(free_depth_m(face, 2, Disc{{1, 0}, 3}) == 0);
}

TEST_CASE("What passes behind the face and comes forward beside the strip leaves it free") {
  const Pose face{{0, 0}, Bearing::degrees(90)};
  CHECK(free_depth_m(face, 2, Disc{{-2.5, 2.9}, 3}) == nothing_in_front);
  CHECK(free_depth_m(face, 2, Polygon{{{-5, -2}, {-4, -2}, {2, 4}, {1, 4}}, {}}) == nothing_in_front);
  CHECK(free_depth_m(face, 2, Polygon{{{-3, -2}, {-2, -2}, {4, 4}, {3, 4}}, {}}) == 0);
  CHECK(free_depth_m(face, 2, rectangle({{0, 0}, Bearing::degrees(0)}, 40, 40)) == 0);
}

TEST_CASE("A round thing and its polygon of many corners are as far ahead") {
  std::mt19937 random{20261125};
  std::uniform_real_distribution<double> place{-20, 20}, size{0.5, 8};
  for (int i = 0; i < 300; ++i) {
    const Pose face{{0, 0}, Bearing::degrees(place(random) * 9)};
    const Disc round{{place(random), place(random)}, size(random)};
    const double exact_m = free_depth_m(face, 3, round),
                 chords_m = free_depth_m(face, 3, disc(round.centre, round.radius_m, 4000));
    INFO("seed 20261125, case " << i);
    if (exact_m == nothing_in_front || chords_m == nothing_in_front) continue;  // a graze may miss the chords
    CHECK(chords_m == Approx(exact_m).margin(0.05));
  }
}

TEST_CASE("A fan and an unload tube want room, which a turn or a move gives") {
  // The fan looks east: a building 8 ft off its wall leaves 2 ft too little. 10 ft: common practice, no source.
  const Site site = yard_with({bin_at(0, 0), building_at(26, 0)});
  const Answer answer = asked(site);
  REQUIRE(finding(answer, "clear.fan-room:1-2") != nullptr);
  CHECK(finding(answer, "clear.fan-room:1-2")->measured == Approx(8 * ft));
  CHECK(verdict(answer, "clear.unload-room") == "pass");
  check_mends(site, "clear.fan-room:1-2", 3);
  CHECK(verdict(asked(yard_with({bin_at(0, 0), building_at(28, 0)})), "clear.fan-room") == "pass");
}

TEST_CASE("A boot wants room in its pit, which a longer pit gives") {
  Leg tight;
  tight.boot.length_m = tight.boot.width_m = tight.tower_width_m + 1 * ft;
  check_mends(yard_with({tight}), "clear.boot-room:1", 1);
  CHECK(verdict(asked(yard_with({Leg{}})), "clear.boot-room") == "pass");
}
