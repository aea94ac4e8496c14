#include "geom/io/brief_file.hpp"

#include <catch2/catch.hpp>

#include "geom/units/grain_volume.hpp"

using namespace yardwright;

namespace {

std::string problems_of(std::string_view text) {
  const auto read = growth_brief_in(text, "the.brief", UnitSystem::us);
  std::string all;
  if (!read) {
    for (const Problem& problem : read.error()) all += sentence(problem) + "\n";
  }
  return all;
}

}  // namespace

TEST_CASE("A brief is read with its units, or in those of the yard") {
  const auto read = growth_brief_in(R"({"brief": 1, "wanted": "40000 bu", "grain": "corn",
    "bins": ["36 ft x 24 ft", "12m x 9m", "30 x 20"], "leg-heights": ["120 ft", 140], "outlets": 16, "most-bins": 6,
    "budget": 300000, "advice": true})",
                                    "the.brief", UnitSystem::us);
  REQUIRE(read);
  constexpr double ft = 0.3048;
  CHECK(read->wanted_m3 == Approx(40'000 * cubic_metres_per_bushel).epsilon(1e-12));
  REQUIRE(read->bins.size() == 3);
  CHECK(read->bins[0].diameter_m == Approx(36 * ft));
  CHECK(read->bins[1] == BinSize{12, 9});
  CHECK(read->bins[2].eave_height_m == Approx(20 * ft));
  REQUIRE(read->discharge_m.size() == 2);
  CHECK(read->discharge_m[1] == Approx(140 * ft));
  CHECK(read->grain == "corn");
  CHECK(read->outlets == 16);
  CHECK(read->most_bins == 6);
  CHECK(read->budget == 300'000.0);
  CHECK(read->bears_advice);
}

TEST_CASE("Every slip in a brief is told with its line and what to do") {
  const std::string all = problems_of(
      "{\"brief\": 1, \"wanted\": \"40000 ft\",\n\"bins\": [\"36 ft\", \"900ft x 24ft\"],\n"
      "\"leg-heights\": 90, \"budget\": -5,\n\"outlets\": 2.5, \"advice\": 1, \"lags\": 2}");
  for (const char* part : {"line 1", "line 2: \"36 ft\" is no size of a bin", "a diameter of 900.0 ft is none",
                           "line 3: \"leg-heights\" is a number", "\"budget\" is no sum of money",
                           "\"outlets\" is none", "\"advice\" is a number", "\"lags\" is no field of it"})
    CHECK_THAT(all, Catch::Contains(part));
  CHECK_THAT(problems_of("[]"), Catch::Contains("is no brief"));
  CHECK_THAT(problems_of("{\"brief\": 2}"), Catch::Contains("is no brief of version 1"));
  CHECK_THAT(problems_of("{"), Catch::Contains("the.brief"));
  CHECK_THAT(problems_of("{\"brief\": 1, \"wanted\": \"-5 bu\"}"), Catch::Contains("beyond any yard"));
}

TEST_CASE("What no bin and no leg can have is refused") {
  CHECK(parse_bin_size("36ft x 24ft", UnitSystem::us));
  CHECK_FALSE(parse_bin_size("36ft", UnitSystem::us));
  CHECK_FALSE(parse_bin_size("36ft x", UnitSystem::us));
  CHECK_FALSE(parse_bin_size("x", UnitSystem::us));
  CHECK_FALSE(parse_bin_size("36ft x 0ft", UnitSystem::us));
  CHECK_FALSE(parse_leg_height("1ft", UnitSystem::us));
  CHECK_FALSE(parse_leg_height("high", UnitSystem::us));
  CHECK(parse_leg_height("120", UnitSystem::us));
}
