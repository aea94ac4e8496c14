#include "geom/shape/outline.hpp"

#include <catch2/catch.hpp>
#include <random>

using namespace yardwright;

TEST_CASE("Wall to wall between two discs is their centre distance less both radii") {
  const NearestPair pair = nearest_pair(Outline{Disc{{0, 0}, 3}}, Outline{Disc{{10, 0}, 2}});
  CHECK(pair.distance_m == Approx(5));
  CHECK(pair.a == SitePoint{3, 0});
  CHECK(pair.b == SitePoint{8, 0});
}

TEST_CASE("Things that overlap or lie inside each other are at distance zero") {
  const Outline box = rectangle({{0, 0}, {}}, 10, 10);
  CHECK(nearest_pair(Outline{Disc{{0, 0}, 1}}, box).distance_m == 0);
  CHECK(nearest_pair(Outline{Disc{{6, 0}, 2}}, box).distance_m == 0);
  CHECK(nearest_pair(box, Outline{rectangle({{1, 1}, {}}, 2, 2)}).distance_m == 0);
  CHECK(nearest_pair(Outline{rectangle({{0, 0}, Bearing::degrees(45)}, 20, 1)}, box).distance_m == 0);
}

TEST_CASE("The exact distance of a disc to a polygon is that of a many-cornered disc, on random pairs") {
  const unsigned seed = 99;
  INFO("seed " << seed);
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> place{-30, 30}, size{1, 8}, turn{0, 360};
  for (int i = 0; i < 300; ++i) {
    const Disc round{{place(random), place(random)}, size(random)};
    const Outline box =
        rectangle({{place(random), place(random)}, Bearing::degrees(turn(random))}, size(random), size(random));
    const double exact_m = nearest_pair(Outline{round}, box).distance_m;
    const double many_m = nearest_pair(Outline{disc(round.centre, round.radius_m, 720)}, box).distance_m;
    CHECK(exact_m == Approx(many_m).margin(1e-3));
    CHECK(nearest_pair(box, Outline{round}).distance_m == Approx(exact_m).margin(1e-12));
  }
}

TEST_CASE("A rectangle's length lies along its facing") {
  const Polygon east = rectangle({{0, 0}, Bearing::degrees(90)}, 10, 4);
  const Box box = box_of(east.outer);
  CHECK(box.high.x == Approx(5));
  CHECK(box.high.y == Approx(2));
}

TEST_CASE("An offset square has its area plus the strips and the rounded corners") {
  const Region grown_square = offset({rectangle({{0, 0}, {}}, 10, 10)}, 2, 720);
  CHECK(area_m2(grown_square) == Approx(100 + 4 * 10 * 2 + M_PI * 4).epsilon(1e-4));
}

TEST_CASE("Union, difference and common part keep areas") {
  const Region a{rectangle({{0, 0}, {}}, 10, 10)}, b{rectangle({{5, 0}, {}}, 10, 10)};
  CHECK(area_m2(united({a.front(), b.front()})) == Approx(150));
  CHECK(area_m2(common(a, b)) == Approx(50));
  CHECK(area_m2(without(a, b)) == Approx(50));
}

TEST_CASE("What is no area is said in words") {
  CHECK(what_is_wrong_with({{{0, 0}, {1, 0}}, {}}).find("corners") != std::string::npos);
  CHECK(what_is_wrong_with({{{0, 0}, {10, 10}, {10, 0}, {0, 10}}, {}}).find("crosses") != std::string::npos);
  CHECK(what_is_wrong_with(rectangle({}, 3, 3)).empty());
}
