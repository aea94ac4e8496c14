#include "geom/sheet/sheet_scale.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;

TEST_CASE("A scale is understood as people write it") {
  // 1 in = 40 ft is 480 inches of ground for an inch of paper: arithmetic.
  for (const char* text : {"1in=40ft", "1 in = 40 ft", "1:480", "1/480"}) {
    INFO(text);
    const auto scale = parse_scale(text);
    REQUIRE(scale.has_value());
    CHECK(*scale == Approx(480));
  }
}

TEST_CASE("What is no scale is refused with an example") {
  for (const char* text : {"", "40", "1in=", "=40ft", "0:500", "1:0", "1:-5", "one:two", "1:1e12"}) {
    INFO(text);
    const auto scale = parse_scale(text);
    REQUIRE_FALSE(scale.has_value());
    CHECK(scale.error().mend.find("1:500") != std::string::npos);
  }
}

TEST_CASE("The chosen scale is the largest standard one that fits") {
  // 400 mm of paper for 200 m is 1:500 exactly; a metre more needs the next one.
  CHECK(scale_ratio_that_fits(200, 50, 400, 250, UnitSystem::metric) == 500);
  CHECK(scale_ratio_that_fits(201, 50, 400, 250, UnitSystem::metric) == 1000);
  CHECK(scale_ratio_that_fits(50, 126, 400, 250, UnitSystem::metric) == 1000);
  // 10 in of paper for 390 ft is 1 in = 40 ft.
  CHECK(scale_ratio_that_fits(390 * 0.3048, 10, 254, 254, UnitSystem::us) == 480);
}

TEST_CASE("A ground beyond every standard scale still gets one at which it fits") {
  const double ratio = scale_ratio_that_fits(20000, 20000, 100, 100, UnitSystem::metric);
  CHECK(20000 * 1000 / ratio <= 100);
}

TEST_CASE("A scale is stated in the trade's words") {
  CHECK(scale_words(480, UnitSystem::us) == "1 in = 40 ft");
  CHECK(scale_words(1250, UnitSystem::metric) == "1:1250");
}
