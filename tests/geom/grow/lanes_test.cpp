// Lanes against gaps by hand: a yard in two halves with the dump between them and one opening, and a dump behind a gate.
#include "geom/grow/lanes.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

#include "geom/site/footprint.hpp"
#include "tests/scenes/scene_builder.hpp"
#include "tests/scenes/scenes.hpp"

using namespace yardwright;
using namespace yardwright::grow;
using namespace yardwright::scenes;

namespace {

constexpr double lane_m = 14 * ft;

/// The dump's west end is reached from the gate in the east half only between two round things `gap_m` apart.
struct TwoHalves {
  explicit TwoHalves(double gap_m, Bearing turned = {}) {
    Site bare;
    bare.lot = rectangular_lot(100, 80);
    SceneBuilder yard{bare};
    gate = yard.add("Gate", Gate{.at = {80, 0}, .facing = Bearing::degrees(0), .width_m = 9});
    dump = yard.add("Dump", Receiving{.at = {50, 40}, .facing = Bearing::degrees(90), .length_m = 10, .width_m = 6});
    yard.add("North wall", Building{.at = {50, 62}, .length_m = 39, .width_m = 3});
    yard.add("South wall", Building{.at = {50, 26.5}, .length_m = 23, .width_m = 3});
    yard.add("At the edge", Bin{.at = {50, 4}, .diameter_m = 8});
    bin = yard.add("In the gap", Bin{.at = {50, 12 + gap_m}, .diameter_m = 8}, 1);
    site = yard.site();
    turn(turned);
  }
  void turn(Bearing by) {
    const Angle clockwise = Angle::degrees(by.as_degrees());
    for (SitePoint& corner : site.lot.corners) corner = yardwright::turned(corner, {50, 40}, clockwise);
    for (Item& item : site.items) item.thing = yardwright::turned(item.thing, {50, 40}, clockwise);
  }

  Site site;
  ItemId gate, dump, bin;
};

bool reaches(const LaneGoals& reached, LaneGoal goal) { return std::ranges::count(reached, goal) > 0; }

}  // namespace

TEST_CASE(
    "A gap 0.2 ft wider than a lane keeps the loop and one 0.2 ft narrower closes it, however the yard is turned") {
  for (double turned_deg = 0; turned_deg < 360; turned_deg += 11.3) {
    INFO(turned_deg);
    const Bearing turned = Bearing::degrees(turned_deg);
    const TwoHalves open{lane_m + 0.2 * ft, turned}, closed{lane_m - 0.2 * ft, turned};
    const LaneGoals all{{open.gate, 0}, {open.dump, -1}, {open.dump, 1}};
    CHECK(Lanes{open.site}.reached(lane_m) == all);
    const LaneGoals half = Lanes{closed.site}.reached(lane_m);
    CHECK(half == LaneGoals{{closed.gate, 0}, {closed.dump, 1}});
    CHECK(missing_of(half, all) == LaneGoals{{closed.dump, -1}});
    CHECK(Lanes{closed.site}.reached(lane_m, {closed.bin}) == all);
  }
}

TEST_CASE("The widest lane is as wide as its narrowest gap, told a little too narrow and never too wide") {
  for (const double gap_m : {1.3, 2.9, 4.1, 5.6, 6.4}) {
    const TwoHalves yard{gap_m};
    const LaneGoals all = Lanes{yard.site}.reached(0.5);
    REQUIRE(all.size() == 3);
    const double widest_m = Lanes{yard.site}.widest_m(all, 0.2, 9, 0.04);
    INFO(gap_m << " " << widest_m);
    CHECK(widest_m <= gap_m + 1e-6);
    CHECK(widest_m > gap_m - 0.04);
  }
}

TEST_CASE("Between two thrown discs a lane passes just where their distance says so") {
  for (int i = 0; i < 40; ++i) {
    const double radius_m = 2 + 0.2 * i, other_m = 9 - 0.1 * i, way = 0.3 + 0.07 * i;
    const SiteVector aside{std::sin(way), std::cos(way)};
    if (std::abs(aside.x) < 0.6) continue;  // else the walls run over the dump or the gate
    for (const double off_m : {-0.03, 0.03}) {
      // The two lie across a corridor as wide as both, their gap in its middle; the lane's narrowest place is between them.
      const double apart_m = radius_m + other_m + lane_m + off_m;
      Site bare;
      bare.lot = rectangular_lot(200, 200);
      for (SitePoint& corner : bare.lot.corners) corner = corner + SiteVector{-100, -100};
      SceneBuilder yard{bare};
      yard.add("", Gate{.at = {0, -100}, .width_m = 9});
      const ItemId dump = yard.add("", Receiving{.at = {0, 80}, .facing = Bearing::degrees(0), .length_m = 10});
      yard.add("", Bin{.at = SitePoint{} + aside * (apart_m / 2), .diameter_m = 2 * radius_m});
      yard.add("", Bin{.at = SitePoint{} + aside * (-apart_m / 2), .diameter_m = 2 * other_m});
      // Walls from either disc to the edge of the lot, along the same line.
      for (const double side : {-1.0, 1.0})
        yard.add("", Building{.at = SitePoint{} + aside * (side * (apart_m / 2 + 100)),
                              .facing = Bearing::degrees(way * 180 / std::numbers::pi),
                              .length_m = 200,
                              .width_m = 1});
      INFO(i << " " << off_m);
      CHECK(reaches(Lanes{yard.site()}.reached(lane_m), {dump, -1}) == (off_m > 0));
    }
  }
}

TEST_CASE("A gate is shut by what stands before it, and one narrower than a lane is no gate for it") {
  TwoHalves yard{6};
  SceneBuilder shut{yard.site};
  const ItemId shed =
      shut.add("Shed", Building{.at = {80, 5}, .facing = Bearing::degrees(90), .length_m = 9, .width_m = 4});
  CHECK(Lanes{shut.site()}.reached(lane_m).empty());
  CHECK(Lanes{shut.site()}.reached(lane_m, {shed}).size() == 3);
  for (Item& item : yard.site.items) {
    if (Gate* gate = std::get_if<Gate>(&item.thing)) gate->width_m = lane_m - 0.01;
  }
  CHECK(Lanes{yard.site}.reached(lane_m).empty());
  CHECK(Lanes{yard.site}.reached(lane_m - 0.02).size() == 3);
}

TEST_CASE(
    "Trucks pass beside half a gate, over a scale and under a load-out, and not over an open pit or a wet bin's "
    "stand") {
  const auto reached_with = [](const Thing& thing) {
    SceneBuilder yard{TwoHalves{6}.site};
    yard.add("", thing);
    return Lanes{yard.site()}.reached(lane_m).size();
  };
  const SitePoint in_gap{50, 10.5};
  CHECK(reached_with(Tank{.at = {76.5, 1}}) == 3);
  CHECK(reached_with(Scale{.at = in_gap}) == 3);
  CHECK(reached_with(OverheadHolding{.at = in_gap, .use = HoldingUse::load_out}) == 3);
  CHECK(reached_with(OverheadHolding{.at = in_gap, .use = HoldingUse::wet_holding}) == 2);
  CHECK(reached_with(Pit{.at = in_gap}) == 2);
}
