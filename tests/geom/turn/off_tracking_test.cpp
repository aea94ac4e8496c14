#include "geom/turn/off_tracking.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <random>

#include "geom/turn/driving.hpp"

using namespace yardwright;
using namespace yardwright::turn;

namespace {

/// Closed forms worked in feet (computed); lengths only have to agree among themselves.
constexpr double tolerance = 1e-3;

Vehicle chain(const std::vector<std::pair<double, double>>& wheelbase_and_hitch) {
  Vehicle vehicle;
  for (const auto& [wheelbase, hitch] : wheelbase_and_hitch)
    vehicle.units.push_back({"unit", wheelbase, hitch, 1, 1, 2, 3});
  return vehicle;
}

double last_axle(const Vehicle& vehicle, double radius) {
  const auto steady = steady_state(vehicle, radius);
  REQUIRE(steady.has_value());
  return steady->axle_radius_m.back();
}

}  // namespace

TEST_CASE("A link on an arc follows the closed form: radius larger than the link", "[turn]") {
  const Angle psi = link_angle_on_arc(60, 30, Angle::degrees(90));
  CHECK(psi.as_degrees() == Approx(28.2341).margin(tolerance));
  CHECK(trailing_radius_m(60, 30, psi) == Approx(52.8860).margin(tolerance));
  const Angle longer = link_angle_on_arc(38, 20, Angle::degrees(180));
  CHECK(longer.as_degrees() == Approx(31.5835).margin(tolerance));
  CHECK(trailing_radius_m(38, 20, longer) == Approx(32.3715).margin(tolerance));
}

TEST_CASE("A link on an arc follows the closed form: radius smaller than the link", "[turn]") {
  const Angle psi = link_angle_on_arc(41, 45.5, Angle::degrees(180));
  CHECK(psi.as_degrees() == Approx(69.7019).margin(tolerance));
  CHECK(trailing_radius_m(41, 45.5, psi) == Approx(15.8727).margin(tolerance));
  // It starts by swinging outward: off-tracking is negative at 45 degrees.
  CHECK(trailing_radius_m(41, 45.5, link_angle_on_arc(41, 45.5, Angle::degrees(45))) ==
        Approx(41.7453).margin(tolerance));
}

TEST_CASE("A link on an arc follows the closed form: radius equal to the link", "[turn]") {
  const Angle psi = link_angle_on_arc(60, 60, Angle::degrees(90));
  CHECK(psi.as_degrees() == Approx(47.4895).margin(tolerance));
  CHECK(trailing_radius_m(60, 60, psi) == Approx(43.5028).margin(tolerance));
  CHECK(link_angle_on_arc(60, 60, {}) == Angle{});
}

TEST_CASE("A link falls into line on a straight as the tractrix says", "[turn]") {
  const Angle psi = link_angle_on_straight(Angle::degrees(30), 45.5, 45.5);
  CHECK(psi.as_degrees() == Approx(11.2593).margin(tolerance));
  CHECK(45.5 * sin(psi) == Approx(8.8838).margin(tolerance));
  // Tractrix from 90 degrees, x = L (u - tanh u), y = L / cosh u (proofwiki, Equation of Tractrix, read).
  const Angle square = link_angle_on_straight(Angle::degrees(90), 10, 10);
  CHECK(10 * sin(square) == Approx(10 / std::cosh(1.0)).margin(1e-9));
  CHECK(10 * sin(square) == Approx(6.4805).margin(tolerance));
  CHECK(10 - 10 * cos(square) == Approx(10 * (1 - std::tanh(1.0))).margin(1e-9));
}

TEST_CASE("A chain settles where the sum of squares puts it", "[turn]") {
  const auto wb62 = steady_state(chain({{19.5, 0}, {41, 0}}), 75);
  REQUIRE(wb62.has_value());
  CHECK(wb62->axle_radius_m.front() == Approx(72.421).margin(tolerance));
  CHECK(wb62->axle_radius_m.back() == Approx(59.697).margin(tolerance));
  CHECK(wb62->off_tracking_m == Approx(15.303).margin(tolerance));
  CHECK(last_axle(chain({{12.5, 0}, {25.5, 0}}), 60) == Approx(52.854).margin(tolerance));
}

TEST_CASE("A hitch off the axle adds its square, ahead or behind", "[turn]") {
  CHECK(last_axle(chain({{10, -3}, {14, 0}}), 30) == Approx(24.759).margin(tolerance));
  CHECK(last_axle(chain({{10, 3}, {14, 0}}), 30) == Approx(24.759).margin(tolerance));
  CHECK(last_axle(chain({{10, -3}, {6.5, 0}, {9, -3}, {6.5, 0}, {9, 0}}), 30) == Approx(23.906).margin(tolerance));
  CHECK(last_axle(chain({{19.5, 1}, {45.5, 0}}), 100) == Approx(86.894).margin(tolerance));
}

TEST_CASE("A circle too tight for the chain has no steady state, and says so", "[turn]") {
  const Vehicle wb67 = chain({{19.5, 0}, {45.5, 0}});
  CHECK_FALSE(steady_state(wb67, 41).has_value());
  CHECK(least_steady_radius_m(wb67) == Approx(49.50).margin(0.01));
  CHECK_FALSE(steady_state(wb67, 49.50).has_value());
  CHECK(steady_state(wb67, 49.51).has_value());
  CHECK_FALSE(steady_state({}, 100).has_value());
}

TEST_CASE("Driving agrees with the closed forms on random arcs", "[turn]") {
  constexpr unsigned seed = 12345;
  INFO("seed " << seed);
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> radius_m{8, 80}, wheelbase_m{3, 15}, swept_deg{5, 170};
  for (int i = 0; i < 200; ++i) {
    const double r = radius_m(random), l = wheelbase_m(random);
    const Angle swept = Angle::degrees(swept_deg(random));
    const Driven driven = drive(chain({{l, 0}}), single_turn(0, r, swept, 0), 0.5);
    const double rho_m = distance(driven.pose(driven.stations() - 1, 0).axle, {0, r});
    REQUIRE(rho_m == Approx(trailing_radius_m(r, l, link_angle_on_arc(r, l, swept))).margin(1e-4));
  }
}

TEST_CASE("A chain that goes round and round settles on its steady circle", "[turn]") {
  const Vehicle wagons = chain({{3, -0.9}, {2, 0}, {2.7, -0.9}, {2, 0}, {2.7, 0}});
  const Driven driven = drive(wagons, single_turn(0, 10, Angle::degrees(1800), 0));
  const auto steady = steady_state(wagons, 10);
  REQUIRE(steady.has_value());
  for (std::size_t unit = 0; unit < wagons.units.size(); ++unit) {
    const double radius_m = distance(driven.pose(driven.stations() - 1, unit).axle, {0, 10});
    CHECK(radius_m == Approx(steady->axle_radius_m[unit]).margin(1e-4));
  }
}
