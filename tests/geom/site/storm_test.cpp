#include "geom/site/storm.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;

namespace {

Problem refusal_of(const char* text) {
  const auto curve = parse_mass_curve(text);
  REQUIRE_FALSE(curve.has_value());
  CHECK_FALSE(curve.error().mend.empty());
  return curve.error();
}

}  // namespace

TEST_CASE("A storm's table is read in hours where bare, in any unit where one is given") {
  const auto curve = parse_mass_curve("0 0, 90min 0.1,6h 0.5 , 12 1");
  REQUIRE(curve.has_value());
  CHECK(curve->points == std::vector<MassPoint>{{0, 0}, {5400, 0.1}, {21600, 0.5}, {43200, 1}});
  CHECK(curve->fallen_ratio(3 * 3600 + 45 * 60) == Approx(0.3));
  CHECK(curve->fallen_ratio(-1) == 0);
  CHECK(curve->fallen_ratio(43200) == 1);
  CHECK(curve->fallen_ratio(90000) == 1);
  CHECK(parse_mass_curve(text_of(*curve)) == *curve);
}

TEST_CASE("No text is no table, and is known as none") {
  const auto none = parse_mass_curve("");
  REQUIRE(none.has_value());
  CHECK_FALSE(none->known());
  CHECK(text_of(*none).empty());
  CHECK(parse_mass_curve("  ").has_value());
}

TEST_CASE("A storm's table that cannot be is refused with what is wrong and what to do") {
  CHECK(refusal_of("0 0, 6 0.5, 5 0.7, 24 1").what == "5 h comes after 6 h");
  CHECK(refusal_of("0 0, 6 0.5, 7 0.4, 24 1").what == "the share falls from 0.5 to 0.4 at 7 h");
  CHECK(refusal_of("0 0, 6 0.5, 24 0.9").what == "the table ends at a share of 0.9");
  CHECK(refusal_of("0 0, 30 1").what == "the table ends at 30 h");
  CHECK(refusal_of("1 0, 24 1").what == "the table does not begin with nothing fallen");
  CHECK(refusal_of("0 0").what == "the table has 1 points");
  CHECK(refusal_of("0 0, noon 0.5, 24 1").what == "\"noon\" is no time");
  CHECK(refusal_of("0 0, 12 1.5, 24 1").what == "\"1.5\" is no share of the rain");
  CHECK(refusal_of("0 0, 12 nan, 24 1").what == "\"nan\" is no share of the rain");
  CHECK(refusal_of("0 0, 12, 24 1").what == "\" 12\" is no time with a share");
  CHECK(refusal_of("0 0,, 24 1").what == "\"\" is no time with a share");
}
