#include "geom/ground/line_crossings.hpp"

#include <catch2/catch.hpp>

#include "tests/geom/ground/test_grounds.hpp"

using namespace yardwright;

namespace {

constexpr GridFrame metre{{0, 0}, 1, 100, 100};

std::vector<LineCrossing> crossed(std::vector<Thing> things, const SitePath& path, ItemId along = {}) {
  const Site site = site_with(flat_ground(metre, 100), std::move(things));
  return line_crossings(site, design_surface(site), path, along);
}

const SitePath eastward{{10, 50}, {90, 50}};

}  // namespace

TEST_CASE("A line through a bin beside its middle is inside for a chord of the circle", "[section]") {
  const Bin bin{.at = {50, 53},
                .diameter_m = 10,
                .eave_height_m = 7,
                .roof_slope = Angle::degrees(45),
                .foundation_height_m = 0.5,
                .inlet_over_peak_m = 0.25};
  const auto crossings = crossed({bin}, eastward);
  REQUIRE(crossings.size() == 1);
  CHECK(crossings[0].from_m == Approx(36));  // closed form: half a chord of sqrt(5^2 - 3^2) = 4 around 40
  CHECK(crossings[0].to_m == Approx(44));
  REQUIRE(crossings[0].at_from);
  CHECK(crossings[0].at_from->base_m == Approx(100));
  CHECK(crossings[0].at_from->top_m == Approx(100 + 0.5 + 7 + 5 + 0.25));
  CHECK_FALSE(crossings[0].is_below);
}

TEST_CASE("A line that bends inside an outline is one stretch, and one that leaves and comes back is two",
          "[section]") {
  const Outline square = Polygon{{{0, 0}, {10, 0}, {10, 10}, {0, 10}}, {}};
  const auto bent = stretches_inside({{-5, 5}, {5, 5}, {5, 20}}, square);
  REQUIRE(bent.size() == 1);
  CHECK(bent[0].from_m == Approx(5));
  CHECK(bent[0].to_m == Approx(15));
  const auto twice = stretches_inside({{-5, 2}, {15, 2}, {15, 8}, {-5, 8}}, square);
  REQUIRE(twice.size() == 2);
  CHECK(twice[1].from_m == Approx(31));
  CHECK(twice[1].to_m == Approx(41));
}

TEST_CASE("A line that begins inside is in from its start, and one that passes by is never in", "[section]") {
  const Outline disc = Disc{{0, 0}, 2};
  const auto begun = stretches_inside({{1, 0}, {9, 0}}, disc);
  REQUIRE(begun.size() == 1);
  CHECK(begun[0].from_m == 0);
  CHECK(begun[0].to_m == Approx(1));
  CHECK(stretches_inside({{-9, 2.1}, {9, 2.1}}, disc).empty());
  CHECK(stretches_inside({{-9, 0}, {-9, 0}}, disc).empty());
  CHECK(stretches_inside({{0, 0}}, disc).empty());
}

TEST_CASE("A pit in the ground goes from its floor to its rim, beside the building over it", "[section]") {
  Receiving dump{.at = {50, 50}, .length_m = 16, .width_m = 8, .height_m = 6};
  dump.pit = {.width_m = 4, .length_m = 6, .depth_m = 2.5, .rim_height_m = 0.25};
  const auto crossings = crossed({dump}, eastward);
  REQUIRE(crossings.size() == 2);
  CHECK_FALSE(crossings[0].is_below);
  CHECK(crossings[0].at_from->top_m == Approx(106));
  CHECK(crossings[1].is_below);
  CHECK(crossings[1].to_m - crossings[1].from_m == Approx(4));  // it faces north: the line crosses its width
  CHECK(crossings[1].at_from->base_m == Approx(97.5));
  CHECK(crossings[1].at_from->top_m == Approx(100.25));
}

TEST_CASE("Along its own path a culvert falls from invert to invert, and a berm is not told of", "[section]") {
  const Culvert pipe{.path = eastward, .diameter_m = 0.5, .start_depth_m = 1, .end_depth_m = 2};
  const auto own = crossed({pipe}, eastward, ItemId{1});
  REQUIRE(own.size() == 1);
  CHECK(own[0].from_m == Approx(0).margin(1e-9));
  CHECK(own[0].to_m == Approx(80));
  CHECK(own[0].at_from->base_m == Approx(99));
  CHECK(own[0].at_to->base_m == Approx(98));
  CHECK(own[0].at_to->top_m == Approx(98.5));
  const Berm berm{eastward, 1, 1, 3};
  CHECK(crossed({berm}, eastward, ItemId{1}).empty());
  CHECK(crossed({berm}, {{50, 10}, {50, 90}}).size() == 1);
}

TEST_CASE("A culvert crossed at a third of its length lies at a third of its fall", "[section]") {
  const Culvert pipe{.path = {{40, 20}, {40, 80}}, .diameter_m = 0.4, .start_depth_m = 0.5, .end_depth_m = 1.1};
  const auto crossings = crossed({pipe}, {{10, 40}, {90, 40}});
  REQUIRE(crossings.size() == 1);
  CHECK(crossings[0].at_from->base_m == Approx(100 - 0.7));
  CHECK(crossings[0].to_m - crossings[0].from_m == Approx(0.4));
}

TEST_CASE("What is only drawn or driven is not told of, and a wire is at its height", "[section]") {
  const SitePath north{{50, 10}, {50, 90}};
  CHECK(crossed({Dimension{north}, Route{.path = north}, Cover{.outline = {{20, 20}, {80, 20}, {80, 80}}}}, eastward)
            .empty());
  const auto wires = crossed({OverheadLine{.path = north, .lowest_conductor_m = 6}}, eastward);
  REQUIRE(wires.size() == 1);
  CHECK(wires[0].at_from->base_m == Approx(106));
}

TEST_CASE("Things that are still a lone point are passed by", "[section]") {
  CHECK(crossed({Drive{.path = {{50, 50}}}, Culvert{}, Tunnel{.path = {{50, 50}, {50, 50}}}}, eastward).empty());
}
