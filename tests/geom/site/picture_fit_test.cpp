#include "geom/site/picture_fit.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>

using namespace yardwright;

namespace {

constexpr double same_m = 1e-9;

bool near(SitePoint a, SitePoint b, double within_m = same_m) { return distance(a, b) < within_m; }

Picture square() {
  Picture picture;
  picture.at = {50, 50};
  picture.width_m = 100;
  return picture;
}

}  // namespace

TEST_CASE("Places in an upright picture run right and down from its top left corner") {
  Picture picture = square();
  picture.proportion_ratio = 0.5;
  CHECK(near(place_in_picture(picture, 0, 0), {0, 75}));
  CHECK(near(place_in_picture(picture, 1, 1), {100, 25}));
  CHECK(near(place_in_picture(picture, 0.5, 0.5), picture.at));
}

// Closed form by hand: (0,0) and (100,0) of the upright square go to (0,0) and (0,-200): twice as large, and turned
// by a quarter clockwise, so that the square [0,100] x [0,100] covers [0,200] x [-200,0].
TEST_CASE("A quarter turn and a doubling come out as by hand") {
  const auto fit = fitted(square(), {{0, 0}, {100, 0}}, {{0, 0}, {0, -200}});
  REQUIRE(fit);
  CHECK(fit->width_m == Approx(200));
  CHECK(fit->facing.as_degrees() == Approx(90));
  CHECK(near(fit->at, {100, -100}));
}

TEST_CASE("By distance the first point stays, the picture keeps its turn and its shape") {
  Picture picture = square();
  picture.facing = Bearing::degrees(30);
  picture.proportion_ratio = 0.7;
  const auto fit = fitted_to_distance(picture, {{10, 20}, {40, 60}}, 25);
  REQUIRE(fit);
  CHECK(fit->width_m == Approx(50));
  CHECK(fit->facing == picture.facing);
  CHECK(fit->proportion_ratio == picture.proportion_ratio);
  CHECK(near(fit->at, {10 + (50 - 10) / 2.0, 20 + (50 - 20) / 2.0}));
}

TEST_CASE("What was seen at two points comes to lie at two others, whatever they are") {
  const unsigned seed = 20240607;
  INFO("seed " << seed);
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> metres{-200, 200}, part{0, 1}, degrees{0, 360};
  for (int i = 0; i < 200; ++i) {
    Picture picture = square();
    picture.at = {metres(random), metres(random)};
    picture.facing = Bearing::degrees(degrees(random));
    picture.proportion_ratio = 0.2 + part(random);
    const double ar = part(random), ad = part(random), br = part(random), bd = part(random);
    const PointPair seen{place_in_picture(picture, ar, ad), place_in_picture(picture, br, bd)};
    const PointPair wanted{{metres(random), metres(random)}, {metres(random), metres(random)}};
    const auto fit = fitted(picture, seen, wanted);
    if (!fit) continue;  // a millionth of a metre apart
    CHECK(near(place_in_picture(*fit, ar, ad), wanted.a, 1e-6));
    CHECK(near(place_in_picture(*fit, br, bd), wanted.b, 1e-6));
  }
}

TEST_CASE("Points that say nothing are refused in a sentence") {
  CHECK_FALSE(fitted(square(), {{1, 1}, {1, 1}}, {{0, 0}, {5, 0}}));
  CHECK_FALSE(fitted(square(), {{0, 0}, {5, 0}}, {{1, 1}, {1, 1}}));
  CHECK_FALSE(fitted_to_distance(square(), {{0, 0}, {5, 0}}, 0));
  CHECK_FALSE(fitted_to_distance(square(), {{3, 3}, {3, 3}}, 10));
  CHECK_FALSE(fitted_to_distance(square(), {{0, 0}, {5, 0}}, std::nan("")));
  const auto huge = fitted_to_distance(square(), {{0, 0}, {0.001, 0}}, 5000);
  REQUIRE_FALSE(huge);
  CHECK(sentence(huge.error()).find("wide") != std::string::npos);
}
