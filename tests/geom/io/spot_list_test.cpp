#include "geom/io/spot_list.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;

namespace {

std::vector<Spot> spots_of(std::string_view text) {
  const auto spots = read_spot_list(text, "spots.csv");
  REQUIRE(spots.has_value());
  return *spots;
}

}  // namespace

TEST_CASE("Spot levels are read with every usual separator, names and remarks") {
  for (const char* text :
       {"1.5,2,100.25\n", "x;y;z\n1,5;2;100,25\n", "# by hand\n\n1.5\t2\t100.25", "  1.5   2 100.25  \r\n",
        "point,northing,easting,elev\n7,2,1.5,100.25\n", "\xEF\xBB\xBFX,Y,Z (m)\n1.5,2,100.25"}) {
    INFO(text);
    const auto spots = spots_of(text);
    REQUIRE(spots.size() == 1);
    CHECK(spots[0].x == 1.5);
    CHECK(spots[0].y == 2);
    CHECK(spots[0].level == 100.25);
  }
}

TEST_CASE("Every line that is no spot is named") {
  const auto spots = read_spot_list("1,2,3\n1,two,3\n4,5\n6,7,nan\n", "spots.csv");
  REQUIRE_FALSE(spots.has_value());
  REQUIRE(spots.error().size() == 3);
  CHECK(spots.error()[0].where == "spots.csv, line 2");
  CHECK(spots.error()[1].where == "spots.csv, line 3");
  CHECK(spots.error()[2].where == "spots.csv, line 4");
}

TEST_CASE("A file of nothing but noise is refused in few words") {
  std::string noise;
  for (int i = 0; i < 1000; ++i) noise += "1,?,!\n";
  const auto spots = read_spot_list(noise, "noise.csv");
  REQUIRE_FALSE(spots.has_value());
  CHECK(spots.error().size() == 21);
}

TEST_CASE("An empty list has no spots") { CHECK(spots_of("").empty()); }
