#include "geom/ground/hillshade.hpp"

#include <catch2/catch.hpp>

#include "tests/geom/ground/test_grounds.hpp"

using namespace yardwright;

namespace {

constexpr GridFrame field{{0, 0}, 2, 30, 20};
const Sun east_sun{Bearing::degrees(90), Angle::degrees(45), 1};

}  // namespace

TEST_CASE("A plane is shaded by the cosine of its normal and the sun, rim included") {
  // Level ground under a sun at 45 degrees: sin 45. A 1:1 slope facing it: 1; facing away: 0.
  const double toward[] = {0, -1, 1}, light[] = {std::sqrt(0.5), 1, 0};
  for (std::size_t i = 0; i < 3; ++i) {
    const auto shade = hillshade(ground_of(field, [&](SitePoint at) { return 100 + toward[i] * at.x; }), east_sun);
    CHECK(shade.frame() == field);
    for (int column = 1; column + 1 < field.columns; ++column)
      CHECK(shade.at({column, 7}) == Approx(light[i]).margin(1e-5));
    CHECK(shade.at({0, 0}) == Approx(light[i]).margin(1e-5));
  }
}

TEST_CASE("Shade lies between 0 and 1 on random ground") {
  for (const unsigned seed : {51u, 52u}) {
    INFO("seed " << seed);
    const auto shade = hillshade(rough_ground(field, seed, 20));
    const auto [low, high] = std::ranges::minmax(shade.values());
    CHECK(low >= 0);
    CHECK(high <= 1);
    CHECK(low < high);
  }
}

TEST_CASE("No ground has no shade, a single cell the light of level ground") {
  CHECK(hillshade({}).empty());
  CHECK(hillshade(flat_ground({{0, 0}, 1, 1, 1}, 5), east_sun).at({0, 0}) == Approx(std::sqrt(0.5)));
}
