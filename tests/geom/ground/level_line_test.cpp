#include "geom/ground/level_line.hpp"

#include <catch2/catch.hpp>
#include <random>

using namespace yardwright;

namespace {

constexpr double exact_m = 1e-9;

LevelLine random_line(unsigned seed) {
  std::mt19937 random{seed};
  std::uniform_real_distribution<double> step_m{-0.4, 0.4};
  LevelLine line{2.0, {100}};
  for (int i = 0; i < 200; ++i) line.levels_m.push_back(line.levels_m.back() + step_m(random));
  return line;
}

double steepest(const LevelLine& line) {
  double ratio = 0;
  for (std::size_t i = 1; i < line.levels_m.size(); ++i)
    ratio = std::max(ratio, std::abs(line.levels_m[i] - line.levels_m[i - 1]) / line.spacing_m);
  return ratio;
}

double farthest_off_m(const LevelLine& a, const LevelLine& b) {
  double off_m = 0;
  for (std::size_t i = 0; i < a.levels_m.size(); ++i) off_m = std::max(off_m, std::abs(a.levels_m[i] - b.levels_m[i]));
  return off_m;
}

}  // namespace

TEST_CASE("A ridge between two ends at one level is cut to the two grades that rise from them") {
  const LevelLine ridge{10, {0, 2, 4, 2, 0}};
  CHECK(gentle_line(ridge, 0.1).levels_m == std::vector<double>{0, 1, 2, 1, 0});
}

TEST_CASE("A step between two levels is graded half into the high side and half into the low one") {
  const LevelLine step{10, {0, 0, 0, 0, 2, 2, 2, 2}};
  const std::vector<double> expected{0, 0, 0, 0.5, 1.5, 2, 2, 2};
  const LevelLine gentle = gentle_line(step, 0.1);
  for (std::size_t i = 0; i < expected.size(); ++i) CHECK(gentle.levels_m[i] == Approx(expected[i]).margin(exact_m));
}

TEST_CASE("Ends too far apart in level for the grade both give way by half") {
  const LevelLine plane{10, {0, 2, 4, 6}};
  const LevelLine gentle = gentle_line(plane, 0.1);
  CHECK(gentle.levels_m.front() == Approx(1.5));
  CHECK(gentle.levels_m.back() == Approx(4.5));
}

TEST_CASE("A gentle line keeps its grade and its ends, and a line that is gentle stays, on random ground") {
  for (const unsigned seed : {41u, 42u, 43u, 44u}) {
    INFO("seed " << seed);
    const LevelLine ground = random_line(seed);
    for (const double ratio : {0.06, 0.1, 0.15}) {
      const LevelLine gentle = gentle_line(ground, ratio);
      CHECK(steepest(gentle) <= ratio + exact_m);
      CHECK(farthest_off_m(gentle_line(gentle, ratio), gentle) < exact_m);
      CHECK(gentle.levels_m.front() == Approx(ground.levels_m.front()).margin(exact_m));
      CHECK(gentle.levels_m.back() == Approx(ground.levels_m.back()).margin(exact_m));
    }
    CHECK(gentle_line(ground, 0.2).levels_m == ground.levels_m);
  }
}

TEST_CASE("Between its samples a line is straight, and beyond its ends level") {
  const LevelLine line{2, {1, 3, 2}};
  CHECK(line.level_m(1) == Approx(2));
  CHECK(line.level_m(3) == Approx(2.5));
  CHECK(line.level_m(-5) == 1);
  CHECK(line.level_m(50) == 2);
}
