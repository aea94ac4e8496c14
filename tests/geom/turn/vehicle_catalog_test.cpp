#include <catch2/catch.hpp>

#include "geom/io/catalogs.hpp"
#include "geom/turn/body.hpp"
#include "geom/turn/clearance.hpp"
#include "geom/turn/off_tracking.hpp"

using namespace yardwright;
using namespace yardwright::turn;

namespace {

const Vehicle& shipped(std::string_view id) {
  const Vehicle* vehicle = find(shipped_catalogs().vehicles, id);
  REQUIRE(vehicle != nullptr);
  return *vehicle;
}

}  // namespace

TEST_CASE("Every shipped vehicle keeps inside < centreline < outer when it turns at its least radius", "[turn]") {
  for (const Vehicle& vehicle : shipped_catalogs().vehicles) {
    INFO(vehicle.id);
    const double radius_m = vehicle.least_front_radius_m;
    const Driven driven = drive(vehicle, single_turn(20, radius_m, Angle::degrees(180), 60));
    const Ring ring = ring_about(driven, bodies_of(vehicle), {20, radius_m});
    CHECK(ring.inside_m > 0);
    CHECK(ring.inside_m < radius_m);
    CHECK(radius_m < ring.outer_m);
    CHECK_FALSE(vehicle.source.empty());
  }
}

TEST_CASE("Every shipped vehicle turns half round at its least radius without folding past its hitch limit", "[turn]") {
  for (const Vehicle& vehicle : shipped_catalogs().vehicles) {
    INFO(vehicle.id);
    const Driven driven = drive(vehicle, single_turn(20, vehicle.least_front_radius_m, Angle::degrees(180), 60));
    CHECK(driven.greatest_hitch.angle <= vehicle.greatest_hitch_angle);
  }
}

TEST_CASE("A design vehicle's overhangs and wheelbases add up to its published length", "[turn]") {
  // AASHTO 2018 table 2-4a (read in a freight curriculum, S2; P and SU-40 from memory); WB-50 and WB-65: 2004 exhibit
  // 2-1, metres read (S3), here in the feet of the US table; tractor and wagon: 16 + 18.5 ft (from memory).
  const std::pair<std::string_view, double> lengths_ft[] = {{"p", 19},       {"su-30", 30},   {"su-40", 39.5},
                                                            {"wb-40", 45.5}, {"wb-50", 55},   {"wb-62", 69},
                                                            {"wb-65", 73.5}, {"wb-67", 73.5}, {"tractor-wagon", 34.5}};
  for (const auto& [id, length_ft] : lengths_ft) {
    INFO(id);
    CHECK(length_in_line_m(shipped(id)) / foot_m == Approx(length_ft).margin(0.05));
  }
}

TEST_CASE("A raised bed's top is hinge, box and wall turned up by its angle", "[turn]") {
  // Computed: 3.5 + 20 sin 50 + 5 cos 50 = 22.03 ft; 3.5 + 16 sin 45 + 4.5 cos 45 = 18.00 ft.
  CHECK(top_m(*shipped("grain-truck-tandem").bed) / foot_m == Approx(22.03).margin(0.01));
  CHECK(top_m(*shipped("grain-truck-single").bed) / foot_m == Approx(18.00).margin(0.01));
  CHECK(top_m(*shipped("end-dump-semi").bed) / foot_m == Approx(35.32).margin(0.01));
}
