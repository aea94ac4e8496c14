#include "geom/turn/driving.hpp"

#include <catch2/catch.hpp>

#include "geom/io/catalogs.hpp"
#include "geom/turn/clearance.hpp"

using namespace yardwright;
using namespace yardwright::turn;

namespace {

constexpr double lead_in_m = 30;

struct Turn {
  std::string_view vehicle;
  double radius_ft;
  double swept_deg;
  double lead_out_ft;
};

const Vehicle& shipped(std::string_view id) {
  const Vehicle* vehicle = find(shipped_catalogs().vehicles, id);
  REQUIRE(vehicle != nullptr);
  return *vehicle;
}

Driven driven_through(const Turn& turn, double step_ft) {
  const Course course =
      single_turn(lead_in_m, turn.radius_ft * foot_m, Angle::degrees(turn.swept_deg), turn.lead_out_ft * foot_m);
  return drive(shipped(turn.vehicle), course, step_ft * foot_m);
}

double inside_ft(const Turn& turn, double step_ft = 0.5) {
  const SitePoint centre{lead_in_m, turn.radius_ft * foot_m};
  return ring_about(driven_through(turn, step_ft), bodies_of(shipped(turn.vehicle)), centre).inside_m / foot_m;
}

/// Only the point abreast of the last axle, as the published radii are measured.
double inside_of_last_axle_ft(const Turn& turn) {
  const Vehicle& vehicle = shipped(turn.vehicle);
  const std::size_t last = vehicle.units.size() - 1;
  const SitePoint centre{lead_in_m, turn.radius_ft * foot_m};
  return ring_about(driven_through(turn, 0.5), {{last, 0, 0, vehicle.units[last].width_m}}, centre).inside_m / foot_m;
}

Turn u_turn(std::string_view vehicle, double radius_ft) { return {vehicle, radius_ft, 180, 200}; }

}  // namespace

TEST_CASE("The design vehicles keep their published inside radii in a half turn", "[turn]") {
  // Least inside radii in feet. P, SU-30, SU-40, WB-40: Texas design manual 4.3.3 table 4-1 (read); WB-62: a military
  // turning page (read); WB-67, WB-65, WB-50: from memory.
  const std::tuple<std::string_view, double, double> published[] = {
      {"p", 21.0, 14.4},    {"su-30", 38.0, 28.4}, {"su-40", 47.4, 36.4}, {"wb-40", 36.0, 19.3},
      {"wb-62", 41.0, 7.4}, {"wb-67", 41.0, 1.9},  {"wb-65", 41.0, 4.4},  {"wb-50", 41.0, 17.0}};
  for (const auto& [vehicle, radius_ft, least_ft] : published) {
    INFO(vehicle);
    CHECK(inside_ft(u_turn(vehicle, radius_ft)) == Approx(least_ft).margin(0.1));
    CHECK(inside_of_last_axle_ft(u_turn(vehicle, radius_ft)) == Approx(least_ft).margin(0.1));
  }
}

TEST_CASE("The nearest comes after the front axle is back on the straight", "[turn]") {
  // Computed, converged integration: 14.21 ft at the end of the arc, 1.964 ft over the whole manoeuvre.
  CHECK(inside_of_last_axle_ft({"wb-67", 41, 180, 0}) == Approx(14.21).margin(0.05));
  CHECK(inside_ft(u_turn("wb-67", 41)) == Approx(1.964).margin(0.01));
}

TEST_CASE("The front wheels of a design vehicle stand at its published steering angle on its least circle", "[turn]") {
  // asin(wheelbase / radius), which the front axle's way makes with the unit once it is settled. WB-62 and WB-67: a digest of
  // NCHRP 505 (read); the others from memory.
  const std::tuple<std::string_view, double, double> published[] = {{"wb-67", 41, 28.4},   {"wb-62", 41, 28.4},
                                                                    {"p", 21, 31.6},       {"su-30", 38, 31.8},
                                                                    {"su-40", 47.4, 31.8}, {"wb-40", 36, 20.3}};
  for (const auto& [vehicle, radius_ft, steering_deg] : published) {
    INFO(vehicle);
    const Course course = single_turn(0, radius_ft * foot_m, Angle::degrees(720), 0);
    const Driven driven = drive(shipped(vehicle), course);
    const SiteVector ahead = driven.pose(driven.stations() - 1, 0).ahead, way = point_on(course, length(course)).ahead;
    CHECK(Angle::radians(std::atan2(cross(ahead, way), dot(ahead, way))).as_degrees() ==
          Approx(steering_deg).margin(0.05));
  }
}

TEST_CASE("A quarter turn cuts in less than a half turn", "[turn]") {
  // Computed, converged integration.
  CHECK(inside_ft({"wb-67", 41, 90, 200}) == Approx(15.58).margin(0.05));
  CHECK(inside_ft({"wb-62", 50, 90, 200}) == Approx(28.85).margin(0.05));
  CHECK(inside_ft({"su-40", 60, 90, 200}) == Approx(50.83).margin(0.05));
}

TEST_CASE("The result does not depend on the step", "[turn]") {
  // A naive pull of the trailer along the line to its hitch gives 1.385 ft at a step of 1 ft (computed).
  const double fine_ft = inside_ft(u_turn("wb-67", 41), 0.05);
  CHECK(inside_ft(u_turn("wb-67", 41), 1) == Approx(fine_ft).margin(0.002));
  CHECK(inside_ft(u_turn("wb-67", 41), 4) == Approx(fine_ft).margin(0.05));
}

TEST_CASE("The poses at a station are the same at every step", "[turn]") {
  const Driven coarse = driven_through(u_turn("tractor-two-wagons", 20), 2),
               fine = driven_through(u_turn("tractor-two-wagons", 20), 0.02);
  for (std::size_t unit = 0; unit < coarse.units; ++unit) {
    const SitePoint a = coarse.pose(coarse.stations() - 1, unit).axle, b = fine.pose(fine.stations() - 1, unit).axle;
    CHECK(distance(a, b) < 1e-4);
  }
}

TEST_CASE("The greatest hitch angle of a half turn is found, with its place", "[turn]") {
  // Computed: 45.6, 64.9 and 70.8 degrees.
  CHECK(driven_through(u_turn("wb-40", 36), 0.5).greatest_hitch.angle.as_degrees() == Approx(45.6).margin(0.1));
  CHECK(driven_through(u_turn("wb-62", 41), 0.5).greatest_hitch.angle.as_degrees() == Approx(64.9).margin(0.1));
  const HitchAngle wb67 = driven_through(u_turn("wb-67", 41), 0.5).greatest_hitch;
  CHECK(wb67.angle.as_degrees() == Approx(70.8).margin(0.1));
  CHECK(wb67.station_m == Approx(lead_in_m + 41 * foot_m * 3.14159).margin(3));
}

TEST_CASE("A mirrored course gives mirrored poses", "[turn]") {
  const Vehicle& truck = shipped("wb-62");
  const Driven left = drive(truck, single_turn(10, 20, Angle::degrees(100), 15));
  const Driven right = drive(truck, single_turn(10, 20, Angle::degrees(-100), 15));
  REQUIRE(left.stations() == right.stations());
  for (std::size_t i = 0; i < left.poses.size(); ++i) {
    REQUIRE(left.poses[i].axle.x == Approx(right.poses[i].axle.x).margin(1e-9));
    REQUIRE(left.poses[i].axle.y == Approx(-right.poses[i].axle.y).margin(1e-9));
  }
}

TEST_CASE("Hitches stay joined and axles never slip sideways", "[turn]") {
  const Vehicle& wagons = shipped("tractor-two-wagons");
  const Driven driven = drive(wagons, course_of({{0, 0}, {40, 0}, {40, 30}, {80, 30}, {60, 70}}, 7), 0.05);
  for (std::size_t station = 1; station < driven.stations(); ++station) {
    for (std::size_t unit = 0; unit < driven.units; ++unit) {
      const UnitPose &before = driven.pose(station - 1, unit), &now = driven.pose(station, unit);
      const SiteVector rolled = now.axle - before.axle;
      REQUIRE(std::abs(cross(turn::between(before, now, 0.5).ahead, rolled)) < 2e-5);
      if (unit == 0) continue;
      const UnitPose& pulling = driven.pose(station, unit - 1);
      const SitePoint hitch = pulling.axle + pulling.ahead * wagons.units[unit - 1].hitch_m;
      REQUIRE(distance(hitch, now.axle + now.ahead * wagons.units[unit].wheelbase_m) < 1e-9);
    }
  }
}

TEST_CASE("Nothing drives where there is no course or no vehicle", "[turn]") {
  CHECK(drive(shipped("p"), {}).stations() == 0);
  CHECK(drive(shipped("p"), course_of({{1, 1}, {1, 1}}, 5)).stations() == 0);
  CHECK(drive({}, single_turn(1, 10, Angle::degrees(10), 1)).stations() == 0);
}
