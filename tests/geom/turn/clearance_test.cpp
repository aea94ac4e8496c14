#include "geom/turn/clearance.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "geom/io/catalogs.hpp"
#include "geom/turn/box_distance.hpp"

using namespace yardwright;
using namespace yardwright::turn;

namespace {

/// A cart of one unit: axle under its middle, 4 m long, 2 m wide.
Vehicle cart() {
  Vehicle vehicle;
  vehicle.units.push_back({"cart", 2, 0, 0, 2, 2, 0});
  return vehicle;
}

struct Drive {
  Driven driven;
  Passage passage;
};

Drive along(const Course& course, const Vehicle& vehicle, double step_m = 0.25) {
  Driven driven = drive(vehicle, course, step_m);
  Passage passage = passage_of(driven, bodies_of(vehicle));
  return {std::move(driven), std::move(passage)};
}

double clear_m(const Drive& one, const Outline& outline) {
  return least_clearance(one.driven, one.passage, outline).distance_m;
}

Polygon square(SitePoint centre, double half_m) {
  return {{centre + SiteVector{-half_m, -half_m}, centre + SiteVector{half_m, -half_m},
           centre + SiteVector{half_m, half_m}, centre + SiteVector{-half_m, half_m}},
          {}};
}

/// The nearest of many points of the box to many points of the ring: written apart from the exact measure.
double sampled_m(const PlacedBox& box, const std::vector<SitePoint>& ring, int samples) {
  const SiteVector left = left_of(box.ahead);
  double best_m = 1e9;
  for (std::size_t k = 0; k < ring.size(); ++k) {
    for (int i = 0; i <= samples; ++i) {
      const SitePoint on_ring = between(ring[k], ring[(k + 1) % ring.size()], double(i) / samples);
      const double ahead_m = dot(on_ring - box.centre, box.ahead), left_m = dot(on_ring - box.centre, left);
      best_m = std::min(best_m, std::hypot(std::max(std::abs(ahead_m) - box.half_length_m, 0.0),
                                           std::max(std::abs(left_m) - box.half_width_m, 0.0)));
    }
  }
  return best_m;
}

}  // namespace

TEST_CASE("Beside a straight way the room is the offset less half the width", "[turn]") {
  const Drive way = along(course_of({{0, 0}, {40, 0}}, 0), cart());
  CHECK(clear_m(way, Disc{{20, 5}, 1.5}) == Approx(5 - 1.5 - 1).margin(1e-9));
  CHECK(clear_m(way, square({20, -4}, 1)) == Approx(4 - 1 - 1).margin(1e-9));
  CHECK(least_clearance(way.driven, way.passage, SitePath{{0, 3}, {40, 3}}).distance_m == Approx(2).margin(1e-9));
  CHECK(clear_m(way, Disc{{20, 1}, 0.5}) == 0);
}

TEST_CASE("On a circle the room to its centre is the inside radius, in closed form", "[turn]") {
  // The axle keeps sqrt(R^2 - L^2); the side of the body touches a circle half its width nearer.
  const Vehicle vehicle = cart();
  const Drive way = along(single_turn(0, 12, Angle::degrees(720), 0), vehicle);
  CHECK(clear_m(way, Disc{{0, 12}, 3}) == Approx(std::sqrt(12 * 12 - 2 * 2) - 1 - 3).margin(1e-4));
}

TEST_CASE("What is told of the tightest place fits together", "[turn]") {
  const Drive way = along(course_of({{0, 0}, {40, 0}}, 0), cart());
  const Clearance tight = least_clearance(way.driven, way.passage, Outline{Disc{{20, 4}, 1}});
  CHECK(distance(tight.on_vehicle, tight.on_obstacle) == Approx(tight.distance_m).margin(1e-9));
  CHECK(tight.on_vehicle.y == Approx(1));
  CHECK(tight.on_obstacle.y == Approx(3));
  CHECK(tight.unit == 0);
  CHECK(std::abs(tight.station_m - 20) < 4.01);  // some part of the cart is abreast of it
}

TEST_CASE("The tightest place between two stations is found as with many more stations", "[turn]") {
  const Vehicle* semi = find(shipped_catalogs().vehicles, "wb-67");
  REQUIRE(semi != nullptr);
  const Course course = course_of({{0, 0}, {50, 0}, {50, 60}}, 16);
  const Drive coarse = along(course, *semi, 1), fine = along(course, *semi, 0.01);
  for (const Outline& outline :
       {Outline{Disc{{38, 14}, 2}}, Outline{square({36, 16}, 1.7)}, Outline{Disc{{56, -2}, 1}}}) {
    CHECK(clear_m(coarse, outline) == Approx(clear_m(fine, outline)).margin(0.002));
  }
}

TEST_CASE("A box is as far from an outline as the nearest of many sampled points", "[turn]") {
  constexpr unsigned seed = 4711;
  INFO("seed " << seed);
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> place_m{-12, 12}, turn{0, 6.2831}, half_m{0.5, 4};
  int apart = 0;
  for (int i = 0; i < 200; ++i) {
    const double heading = turn(random);
    const PlacedBox box{
        {place_m(random), place_m(random)}, {std::cos(heading), std::sin(heading)}, half_m(random), half_m(random)};
    const Polygon other = square({place_m(random), place_m(random)}, half_m(random));
    const NearestPair pair = nearest_pair(box, other.outer);
    if (pair.distance_m == 0) continue;  // they meet
    ++apart;
    REQUIRE(distance(pair.a, pair.b) == Approx(pair.distance_m).margin(1e-9));
    const double sampled = sampled_m(box, other.outer, 800);
    REQUIRE(pair.distance_m <= sampled + 1e-9);
    REQUIRE(pair.distance_m == Approx(sampled).margin(0.01));
  }
  CHECK(apart > 50);
}

TEST_CASE("A box that lies inside an outline, or an outline inside the box, leaves no room", "[turn]") {
  const PlacedBox box{{0, 0}, {1, 0}, 2, 1};
  CHECK(nearest_pair(box, square({0, 0}, 10).outer).distance_m == 0);
  CHECK(nearest_pair(box, square({0.5, 0}, 0.2).outer).distance_m == 0);
  CHECK(nearest_pair(box, Disc{{0, 0}, 30}).distance_m == 0);
  CHECK(nearest_pair(box, Disc{{2.5, 0}, 0.5}).distance_m == Approx(0).margin(1e-12));
}

TEST_CASE("Where nothing was driven there is no clearance, and it is not nought", "[turn]") {
  const Drive none = along({}, cart());
  CHECK(std::isinf(clear_m(none, Disc{{0, 0}, 1})));
}
