#include "geom/io/rain_table_file.hpp"

#include <catch2/catch.hpp>

using namespace yardwright;

namespace {

/// The layout of a NOAA Atlas 14 point export, and its 24-hour row as printed there (Volume 9, public domain); the other
/// rows are shortened.
const std::string text = R"(Point precipitation frequency estimates (inches)
NOAA Atlas 14 Volume 9 Version 2
Data type: Precipitation depth
Time series type: Partial duration
Project area: Southeastern States


PRECIPITATION FREQUENCY ESTIMATES
by duration for ARI (years):, 1,2,5,10,25,50,100,200,500,1000
5-min:, 0.53,0.61,0.74,0.85,1.00,1.12,1.24,1.37,1.54,1.67
24-hr:, 4.01,4.76,6.09,7.28,9.05,10.5,12.1,13.7,16.1,18.0

PRECIPITATION FREQUENCY ESTIMATES, UPPER BOUND
by duration for ARI (years):, 1,2,5,10,25,50,100,200,500,1000
24-hr:, 5.01,5.76,7.09,8.28,10.05,11.5,13.1,14.7,17.1,19.0
)";

std::string with(std::string from, const std::string& to) {
  std::string changed = text;
  changed.replace(changed.find(from), from.size(), to);
  return changed;
}

std::string refused(const std::string& table) {
  const auto read = rain_table_in(table);
  REQUIRE_FALSE(read);
  return read.error().front().what;
}

}  // namespace

TEST_CASE("The 24-hour row of a point's export is read by its years") {
  const auto table = rain_table_in(text);
  REQUIRE(table);
  REQUIRE(table->rows.size() == 10);
  CHECK(table->rows[1].years == 2);
  CHECK(table->rows[1].rain_m == Approx(4.76 * 0.0254));
  CHECK(table->rows[6].years == 100);
  CHECK(table->rows[6].rain_m == Approx(12.1 * 0.0254));
  CHECK(parse_rain_table(text_of(*table, UnitSystem::us), UnitSystem::us) == *table);
}

TEST_CASE("An export in millimetres is read as such") {
  const auto table = rain_table_in(with("(inches)", "(millimeters)"));
  REQUIRE(table);
  CHECK(table->rows[0].rain_m == Approx(0.00401));
}

TEST_CASE("What is no such export is refused with what it lacks") {
  CHECK(refused("").find("neither inches nor") != std::string::npos);
  CHECK(refused(text.substr(0, text.find("24-hr:"))).find("24-hr:") != std::string::npos);
  CHECK(refused(with("depth", "intensity")).find("intensities") != std::string::npos);
  CHECK(refused(with("4.76", "much")).find("no number") != std::string::npos);
  CHECK(refused(with("4.76,", "")).find("columns") != std::string::npos);
  CHECK(refused(with("4.76", "3.76")).find("is not above") != std::string::npos);
}

TEST_CASE("A rain table is typed as years with depths, and refused where it does not rise") {
  const auto table = parse_rain_table("2 3.0in, 10 4.5 in, 100 180mm", UnitSystem::us);
  REQUIRE(table);
  CHECK(table->rows[1] == RainOfYears{10, 4.5 * 0.0254});
  CHECK(table->rows[2] == RainOfYears{100, 0.18});
  CHECK(parse_rain_table("", UnitSystem::us)->rows.empty());
  for (const char* wrong : {"2", "x 3in", "2 3in, 1 4in", "2 3in, 5 2in", "2 -1in", "0.1 3in"}) {
    CAPTURE(wrong);
    CHECK_FALSE(parse_rain_table(wrong, UnitSystem::us));
  }
}
