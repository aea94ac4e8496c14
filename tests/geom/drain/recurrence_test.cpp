#include "geom/drain/recurrence.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;
using namespace yardwright::drain;

namespace {

const RainTable table{{{2, 0.08}, {10, 0.12}, {25, 0.14}, {100, 0.18}}};

Recurrence over(double rain_m) {
  return recurrence_of(table, [rain_m](double asked_m) { return asked_m > rain_m; });
}

}  // namespace

TEST_CASE("What heavy rain brings about comes as often as the least rain that does") {
  CHECK(over(0.13) == Recurrence{25, 10});
  CHECK(over(0.01) == Recurrence{2, std::nullopt});
  CHECK(over(0.5) == Recurrence{std::nullopt, 100});
}

// Chow, Maidment, Mays, Applied Hydrology, for yearly series: 1 - (1 - 1/N)^L (from memory). For rains whose interval is told
// for all rains, not the greatest of each year, a year's chance is 1 - exp(-1/N); both then agree over any number of years.
TEST_CASE("The chance over years is that of at least one such year") {
  const double a_year = chance_ratio(10, 1);
  CHECK(a_year == Approx(0.0952).epsilon(0.001));
  CHECK(chance_ratio(10, 30) == Approx(1 - std::pow(1 - a_year, 30)));
  CHECK(chance_ratio(100, 30) == Approx(0.2592).epsilon(0.001));
}

TEST_CASE("How often is said in words that fit what is known") {
  CHECK(recurrence_words(over(0.13), 30) == "about once in 25 years, a chance of 70 % in 30 years");
  CHECK(recurrence_words(over(0.01), 30) == "once in 2 years or more often");
  CHECK(recurrence_words(over(0.5), 30) == "less than once in 100 years, a chance of 26 % in 30 years at most");
}
