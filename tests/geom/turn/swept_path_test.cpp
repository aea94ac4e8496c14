#include "geom/turn/swept_path.hpp"

#include <catch2/catch.hpp>
#include <numbers>
#include <random>

#include "geom/io/catalogs.hpp"
#include "geom/turn/clearance.hpp"

using namespace yardwright;
using namespace yardwright::turn;

namespace {

const Vehicle& shipped(std::string_view id) {
  const Vehicle* vehicle = find(shipped_catalogs().vehicles, id);
  REQUIRE(vehicle != nullptr);
  return *vehicle;
}

}  // namespace

TEST_CASE("A straight drive sweeps a rectangle", "[turn]") {
  const Vehicle& truck = shipped("su-30");
  const Region swept = swept_area(drive(truck, course_of({{0, 0}, {40, 0}}, 5)), bodies_of(truck));
  REQUIRE(swept.size() == 1);
  CHECK(area_m2(swept) == Approx((40 + 30 * 0.3048) * 8 * 0.3048).margin(0.01));
}

TEST_CASE("A body that circles on its axle's radius sweeps a ring", "[turn]") {
  // A body that is only its axle line keeps to the ring between R - w/2 and R + w/2 about its centre.
  Vehicle truck;
  truck.units.push_back({"truck", 5, 0, 0, 0, 2, 3});
  const Driven driven = drive(truck, single_turn(0, 13, Angle::degrees(900), 0), 0.2);
  const double axle_m = 12;  // sqrt(13^2 - 5^2)
  const Ring ring = ring_about(driven, {{0, 0, 0, 2}}, {0, 13});
  CHECK(ring.inside_m == Approx(axle_m - 1).margin(0.01));
  const Region swept = swept_area(driven, {{0, 1, -1, 2}}, 0.005);
  CHECK_FALSE(contains(swept, {0, 13}));
  CHECK(contains(swept, {axle_m, 13}));
}

TEST_CASE("The swept area's inner edge is the inside radius, to the tolerance", "[turn]") {
  const Vehicle& truck = shipped("wb-62");
  const Driven driven = drive(truck, single_turn(20, 15, Angle::degrees(90), 40));
  const SitePoint centre{20, 15};
  const double inside_m = ring_about(driven, bodies_of(truck), centre).inside_m;
  const Region swept = swept_area(driven, bodies_of(truck), 0.02);
  REQUIRE(swept.size() == 1);
  CHECK(yardwright::nearest_pair(swept.front(), SitePath{centre}).distance_m == Approx(inside_m).margin(0.03));
}

TEST_CASE("Every body of every pose lies in the swept area", "[turn]") {
  constexpr unsigned seed = 99;
  INFO("seed " << seed);
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> turn_deg{-120, 120}, radius_m{13, 30};
  for (const std::string_view id : {"wb-67", "tractor-wagon", "su-40"}) {
    const Vehicle& truck = shipped(id);
    const Driven driven = drive(truck, single_turn(15, radius_m(random), Angle::degrees(turn_deg(random)), 30));
    const Region swept = offset(swept_area(driven, bodies_of(truck), 0.02), 0.025);
    for (std::size_t station = 0; station < driven.stations(); station += 7) {
      for (const Body& body : bodies_of(truck)) {
        for (const SitePoint corner : corners(body, driven.pose(station, body.unit))) REQUIRE(contains(swept, corner));
      }
    }
  }
}

TEST_CASE("Nothing driven sweeps nothing", "[turn]") { CHECK(swept_area({}, bodies_of(shipped("p"))).empty()); }
