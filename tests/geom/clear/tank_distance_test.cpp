#include "geom/clear/tank_distance.hpp"

#include <catch2/catch.hpp>

#include "geom/io/catalogs.hpp"

using namespace yardwright;
using namespace yardwright::clear;

namespace {

constexpr double ft = 0.3048;
constexpr double gallon = 231 * 0.0254 * 0.0254 * 0.0254;
const RuleBook& rules() { return shipped_catalogs().rules; }

}  // namespace

// Case 30 and table 5.1: 29 CFR 1910.110 and code copies (read); classes over 90,000 gal from memory.
TEST_CASE("An LP tank's distance to a building follows its water capacity") {
  constexpr double above[][2] = {{124, 0},     {125, 10},     {250, 10},     {500, 10},     {501, 25},     {1000, 25},
                                 {2000, 25},   {2001, 50},    {30000, 50},   {30001, 75},   {70000, 75},   {90000, 100},
                                 {90001, 125}, {120000, 125}, {200000, 200}, {999999, 300}, {2000000, 400}};
  for (const auto& [gallons, distance_ft] : above) {
    INFO(gallons << " gal");
    CHECK(lp_building_rule(gallons * gallon, false, rules()).value == Approx(distance_ft * ft).margin(1e-9));
  }
  constexpr double buried[][2] = {{100, 10}, {500, 10}, {501, 25}, {2000, 25}, {2001, 50}, {200000, 50}};
  for (const auto& [gallons, distance_ft] : buried)
    CHECK(lp_building_rule(gallons * gallon, true, rules()).value == Approx(distance_ft * ft).margin(1e-9));
}

TEST_CASE("LP tanks stand apart by the class of the larger") {
  constexpr double apart[][2] = {{125, 0}, {250, 0}, {251, 3}, {2000, 3}, {2001, 5}, {30000, 5}};
  for (const auto& [gallons, distance_ft] : apart)
    CHECK(lp_between_rule(gallons * gallon, rules()).value == Approx(distance_ft * ft).margin(1e-9));
  CHECK_FALSE(spaced_by_diameter(30000 * gallon));
  CHECK(spaced_by_diameter(30001 * gallon));
}

// Table 5.3: WAC 296-826-30005 (read).
TEST_CASE("An ammonia tank's distance to the lot line follows its capacity") {
  CHECK(ammonia_line_rule(1500 * gallon, rules()).value == Approx(25 * ft));
  CHECK(ammonia_line_rule(2000 * gallon, rules()).value == Approx(25 * ft));
  CHECK(ammonia_line_rule(2001 * gallon, rules()).value == Approx(50 * ft));
}
