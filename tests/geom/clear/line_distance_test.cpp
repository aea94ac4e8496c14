#include "geom/clear/line_distance.hpp"

#include <catch2/catch.hpp>

#include "geom/io/catalogs.hpp"

using namespace yardwright;
using namespace yardwright::clear;

namespace {

constexpr double ft = 0.3048;
const RuleBook& rules() { return shipped_catalogs().rules; }

double portable_ft(double port_ft, double conductor_ft) {
  return portable_distance_m(port_ft * ft, conductor_ft * ft, rules()).value() / ft;
}

}  // namespace

// Cases 24 and 25: a public power district's table for its 18.5 ft line (read).
TEST_CASE("The published table of distances comes out row by row") {
  constexpr double table[][2] = {{15, 55.5}, {20, 68},  {25, 80.5}, {30, 93},  {35, 105.5},
                                 {40, 118},  {50, 143}, {60, 168},  {70, 193}, {80, 218}};
  for (const auto& [port_ft, distance_ft] : table)
    CHECK(portable_ft(port_ft, 18.5) == Approx(distance_ft).margin(1e-9));
}

// Case 26: the rule is read (a co-op's leaflet), the figure computed: 53 + 1.5 * 18.
TEST_CASE("A higher line may come nearer, by the slope of the envelope") {
  CHECK(portable_ft(35, 35) == Approx(80.0).margin(1e-6));
  double last_ft = portable_ft(35, 5);
  for (double conductor_ft = 6; conductor_ft < 53; conductor_ft += 0.5) {
    const double now_ft = portable_ft(35, conductor_ft);
    CHECK(now_ft <= last_ft);
    last_ft = now_ft;
  }
}

// Case 27: 18 ft over the port (read).
TEST_CASE("A line 18 ft over the port clears at any distance, one a hand lower does not") {
  CHECK_FALSE(portable_distance_m(25 * ft, 43.0 * ft, rules()).has_value());
  CHECK(portable_distance_m(25 * ft, 42.9 * ft, rules()).has_value());
  CHECK_FALSE(permanent_distance_m(25 * ft, 43.0 * ft, rules()).has_value());
  CHECK(permanent_distance_m(25 * ft, 42.9 * ft, rules()).value() / ft == Approx(15));  // a co-op's leaflet (read)
}

// Case 29: 29 CFR 1926.1408, Table A (read).
TEST_CASE("Machines keep Table A's distance from a line") {
  constexpr double table[][2] = {{7.2, 10}, {50, 10}, {69, 15}, {230, 20}, {345, 20}, {500, 25}, {750, 35}, {1000, 45}};
  for (const auto& [kilovolts, distance_ft] : table) {
    CHECK(equipment_distance_m(kilovolts * 1000, rules()) / ft == Approx(distance_ft).margin(1e-9));
  }
}
