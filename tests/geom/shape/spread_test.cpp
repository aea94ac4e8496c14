#include "geom/shape/spread.hpp"

#include <catch2/catch.hpp>
#include <numbers>
#include <random>

using namespace yardwright;

namespace {

double perimeter_m(const Polygon& polygon) {
  SitePath ring = polygon.outer;
  ring.push_back(ring.front());
  return length(ring);
}

Polygon thrown_convex(std::mt19937& random) {
  std::uniform_real_distribution<double> place{-10, 10};
  std::vector<SitePoint> points;
  for (int i = 0; i < 12; ++i) points.push_back({place(random), place(random)});
  return hull_of(std::move(points));
}

}  // namespace

// Steiner's formula for a convex area grown by r: A + P r + pi r^2. Elementary geometry.
TEST_CASE("A convex area grown by a distance has the area of Steiner's formula, and never less") {
  std::mt19937 random{20261126};
  for (int i = 0; i < 50; ++i) {
    const Polygon convex = thrown_convex(random);
    const double by_m = 0.5 + i * 0.3;
    const double exact_m2 = area_m2(convex) + perimeter_m(convex) * by_m + std::numbers::pi * by_m * by_m;
    const double grown_m2 = area_m2(grown_by(convex, Disc{{0, 0}, 0}, by_m));
    INFO("seed 20261126, case " << i);
    CHECK(grown_m2 >= exact_m2 - 1e-9);
    CHECK(grown_m2 <= exact_m2 + (perimeter_m(convex) + 7 * by_m) * round_off_m);
  }
}

// Brunn and Minkowski: for rectangles of one bearing the sides add up.
TEST_CASE("The sum of two rectangles of one bearing is the rectangle of both") {
  const Bearing facing = Bearing::degrees(33);
  const Polygon sum = sum_of(rectangle({{3, 4}, facing}, 10, 4), rectangle({{0, 0}, facing}, 6, 2));
  CHECK(area_m2(sum) == Approx(16 * 6));
  CHECK(distance(centroid(sum), {3, 4}) < 1e-9);
}

TEST_CASE("A place lies in the grown area where the thing put there would come too near") {
  std::mt19937 random{4};
  std::uniform_real_distribution<double> place{-40, 40}, turn{0, 360};
  int within = 0;
  for (int i = 0; i < 400; ++i) {
    const Outline stands =
        i % 2 == 0 ? Outline{Disc{{1, 2}, 7}} : Outline{rectangle({{1, 2}, Bearing::degrees(turn(random))}, 20, 8)};
    const Outline shape =
        i % 3 == 0 ? Outline{Disc{{0, 0}, 4}} : Outline{rectangle({{0, 0}, Bearing::degrees(turn(random))}, 12, 5)};
    const SitePoint at{place(random), place(random)};
    const Outline there = std::holds_alternative<Disc>(shape) ? Outline{Disc{at, 4}} : Outline{[&] {
      Polygon moved = std::get<Polygon>(shape);
      for (SitePoint& p : moved.outer) p = p + (at - SitePoint{});
      return moved;
    }()};
    const double gap = nearest_pair(there, stands).distance_m;
    if (std::abs(gap - 3) < 2 * round_off_m) continue;
    const bool in = contains(grown_by(stands, turned_back(shape, {}), 3), at);
    INFO("seed 4, case " << i << ", gap " << gap);
    CHECK(in == (gap < 3));
    within += in ? 1 : 0;
  }
  CHECK(within > 30);
}

TEST_CASE("An area that is bent or has a hole grows by pieces to the same places") {
  const Polygon bent{{{0, 0}, {30, 0}, {30, 30}, {20, 30}, {20, 10}, {0, 10}}, {}};
  const Outline shape = Disc{{0, 0}, 2};
  const Region grown = united(outline_grown_by(bent, shape, 1));
  CHECK(area_m2(grown) == Approx(area_m2(offset({bent}, 3, 720))).epsilon(1e-3));
  const Polygon ring{disc({0, 0}, 20).outer, {disc({0, 0}, 10).outer}};
  CHECK(area_m2(united(pieces_grown_by(Region{ring}, shape, 1))) ==
        Approx(area_m2(offset({ring}, 3, 720))).epsilon(1e-3));
}

TEST_CASE("Nothing and a point grow to nothing and a disc") {
  CHECK(hull_of({}).outer.empty());
  CHECK(sum_of({}, disc({0, 0}, 1)).outer.empty());
  const Polygon grown = grown_by(Polygon{{{5, 5}}, {}}, Disc{{0, 0}, 0}, 2);
  CHECK(area_m2(grown) == Approx(std::numbers::pi * 4).epsilon(0.01));
}
