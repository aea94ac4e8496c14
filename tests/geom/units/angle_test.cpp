#include "geom/units/angle.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "geom/units/bearing.hpp"
#include "geom/units/grain_volume.hpp"

using namespace yardwright;

TEST_CASE("Sine and cosine are exact at every quarter turn") {
  for (int quarter = -8; quarter <= 8; ++quarter) {
    const Angle angle = Angle::degrees(90.0 * quarter);
    CHECK(sin(angle) == std::round(std::sin(M_PI / 2 * quarter)));
    CHECK(cos(angle) == std::round(std::cos(M_PI / 2 * quarter)));
  }
}

TEST_CASE("A slope of 9 in 12 is 36.870 degrees and of 12 in 12 is 45") {
  CHECK(Angle::of_slope(9, 12).as_degrees() == Approx(36.870).margin(0.001));
  CHECK(Angle::of_slope(12, 12).as_degrees() == Approx(45));
  CHECK(Angle::of_slope(1, 0).as_degrees() == 90);
}

TEST_CASE("Bearings go clockwise from north and stay within one turn") {
  CHECK(Bearing::of(1, 0).as_degrees() == Approx(90));
  CHECK(Bearing::of(0, -1).as_degrees() == Approx(180));
  CHECK(Bearing::degrees(-90).as_degrees() == 270);
  CHECK(Bearing::degrees(720).as_degrees() == 0);
  CHECK(between(Bearing::degrees(350), Bearing::degrees(20)).as_degrees() == Approx(30));
}

TEST_CASE("A bushel is 1.244456 cubic feet, and a tonne of corn is 39.368 bushels") {
  // 2150.42 cubic inches: USDA by way of "Test weight", read; the rest is arithmetic.
  const double cubic_foot = 0.3048 * 0.3048 * 0.3048;
  CHECK(cubic_metres_per_bushel / cubic_foot == Approx(1.244456).margin(1e-6));
  CHECK(cubic_metres_per_bushel == Approx(0.0352391).margin(1e-7));
  CHECK(1 / GrainVolume::bushels(1).as_tonnes(56) == Approx(39.368).margin(0.001));
  CHECK(1 / GrainVolume::bushels(1).as_tonnes(60) == Approx(36.744).margin(0.001));
  CHECK(1 / GrainVolume::bushels(1).as_tonnes(32) == Approx(68.894).margin(0.001));
}

TEST_CASE("A bearing is told by the nearest of the eight points of the compass", "[angle]") {
  CHECK(compass_point(Bearing::degrees(0)) == "north");
  CHECK(compass_point(Bearing::degrees(22.4)) == "north");
  CHECK(compass_point(Bearing::degrees(22.6)) == "north-east");
  CHECK(compass_point(Bearing::degrees(135)) == "south-east");
  CHECK(compass_point(Bearing::of(-1, 0)) == "west");
  CHECK(compass_point(Bearing::degrees(337.6)) == "north");
}
