#include "geom/shape/course.hpp"

#include <catch2/catch.hpp>
#include <numbers>
#include <random>

#include "geom/shape/path.hpp"

using namespace yardwright;

TEST_CASE("A course rounds a corner by a true arc", "[course]") {
  const Course course = course_of({{0, 0}, {50, 0}, {50, 50}}, 10);
  REQUIRE(course.pieces.size() == 3);
  CHECK(course.pieces[1].curvature_per_m == Approx(0.1));
  CHECK(length(course) == Approx(40 + 10 * std::numbers::pi / 2 + 40));
  const CoursePoint middle = point_on(course, length(course) / 2);
  CHECK(distance(middle.at, {40, 10}) == Approx(10));
  CHECK(middle.ahead.x == Approx(std::sqrt(0.5)));
  CHECK(least_radius_m(course) == Approx(10));
  CHECK(station_of_least_radius_m(course) == Approx(40));
}

TEST_CASE("A corner whose legs are short gets the radius that they allow", "[course]") {
  CHECK(least_radius_m(course_of({{0, 0}, {12, 0}, {12, 40}}, 10)) == Approx(6));
}

TEST_CASE("A corner that no arc fits has radius nought", "[course]") {
  CHECK(least_radius_m(course_of({{0, 0}, {20, 0}, {0, 0}}, 10)) == 0);
  CHECK(least_radius_m(course_of({{0, 0}, {20, 0}, {20, 20}}, 0)) == 0);
  CHECK(std::isinf(least_radius_m(course_of({{0, 0}, {20, 0}, {30, 0}}, 10))));
}

TEST_CASE("A course is the curve that with_fillets draws in chords", "[course]") {
  constexpr unsigned seed = 7;
  INFO("seed " << seed);
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> place_m{-60, 60}, radius_m{0.5, 30};
  for (int i = 0; i < 100; ++i) {
    const SitePath path{{place_m(random), place_m(random)},
                        {place_m(random), place_m(random)},
                        {place_m(random), place_m(random)},
                        {place_m(random), place_m(random)}};
    const double radius = radius_m(random);
    const Course course = course_of(path, radius);
    const SitePath drawn = with_fillets(path, radius, 0.01);
    REQUIRE(length(course) == Approx(length(drawn)).epsilon(1e-5));
    for (int k = 0; k <= 10; ++k)
      REQUIRE(nearest_on_path(drawn, point_on(course, length(course) * k / 10).at).distance_m < 1e-3);
  }
}

TEST_CASE("Points that repeat and lone points make no pieces", "[course]") {
  CHECK(course_of({}, 5).pieces.empty());
  CHECK(course_of({{3, 4}, {3, 4}}, 5).pieces.empty());
  CHECK(length(course_of({{0, 0}, {0, 0}, {5, 0}}, 5)) == 5);
}
