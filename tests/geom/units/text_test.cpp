#include "geom/units/text.hpp"

#include <catch2/catch.hpp>
#include <random>

#include "geom/units/grain_volume.hpp"

using namespace yardwright;

namespace {

double parsed(std::string_view text, Quantity quantity, UnitSystem bare = UnitSystem::us) {
  const auto value = parse_quantity(text, quantity, bare);
  REQUIRE(value.has_value());
  return *value;
}

}  // namespace

TEST_CASE("A length is understood in every way that people type it") {
  CHECK(parsed("36ft", Quantity::length) == 36 * 0.3048);
  CHECK(parsed(" 36 FT ", Quantity::length) == 36 * 0.3048);
  CHECK(parsed("36' 6\"", Quantity::length) == 36.5 * 0.3048);
  CHECK(parsed("36 ft 6 in", Quantity::length) == 36.5 * 0.3048);
  CHECK(parsed("11m", Quantity::length) == 11);
  CHECK(parsed("36", Quantity::length, UnitSystem::us) == 36 * 0.3048);
  CHECK(parsed("36", Quantity::length, UnitSystem::metric) == 36);
  CHECK(parsed("1,200 ft", Quantity::length) == 1200 * 0.3048);
}

TEST_CASE("A slope typed as rise in run is its angle") {
  // 9 in 12 is 36.870 degrees: arithmetic.
  CHECK(parsed("9:12", Quantity::angle) == Approx(36.8699).margin(1e-4));
  CHECK(parsed("12:12", Quantity::angle) == Approx(45));
}

TEST_CASE("A side slope is typed as its run alone or for one of rise, and reads so") {
  for (const char* text : {"4", "4:1", "4 : 1", " 4 :1 "}) CHECK(parsed(text, Quantity::side_slope) == 4);
  CHECK(text_of(4, Quantity::side_slope, UnitSystem::us) == "4.0 : 1");
  CHECK(exact_text_of(2.5, Quantity::side_slope, UnitSystem::metric) == "2.5 : 1");
  for (const char* text : {"4:2", "1:4", "4 ft", ":1", "4:"}) {
    CAPTURE(text);
    const auto value = parse_quantity(text, Quantity::side_slope, UnitSystem::us);
    REQUIRE_FALSE(value.has_value());
    CHECK(value.error().mend == "type the run for one of rise: 4, or 4 : 1");
  }
}

TEST_CASE("A return period is in years") {
  for (const char* text : {"25", "25 years", "25 yr"}) CHECK(parsed(text, Quantity::years) == 25);
  CHECK(exact_text_of(25, Quantity::years, UnitSystem::us) == "25 years");
  CHECK(text_of(10000, Quantity::years, UnitSystem::us) == "10,000 years");
}

TEST_CASE("What is not a quantity is refused with the units that would do") {
  for (const char* text : {"", "abc", "36 bananas", "ft", "--3", "nan", "inf", "1e999", "3:0"}) {
    const auto value = parse_quantity(text, Quantity::length, UnitSystem::us);
    INFO(text);
    REQUIRE_FALSE(value.has_value());
    CHECK(value.error().mend.find("ft") != std::string::npos);
  }
}

TEST_CASE("Text for editing parses back to exactly the same number") {
  std::mt19937 random{20261125};
  std::uniform_real_distribution<double> values{-1000, 1000};
  for (const Quantity quantity : {Quantity::length, Quantity::small_length, Quantity::grain_flow, Quantity::grade}) {
    for (const UnitSystem system : {UnitSystem::us, UnitSystem::metric}) {
      for (int i = 0; i < 2000; ++i) {
        const double value = values(random);
        REQUIRE(parsed(exact_text_of(value, quantity, system), quantity, system) == value);
      }
    }
  }
}

TEST_CASE("Numbers come back as they were typed") {
  CHECK(exact_text_of(parsed("36", Quantity::length), Quantity::length, UnitSystem::us) == "36 ft");
  CHECK(exact_text_of(parsed("26.67", Quantity::length), Quantity::length, UnitSystem::us) == "26.67 ft");
  CHECK(exact_text_of(parsed("3000 bu/h", Quantity::grain_flow), Quantity::grain_flow, UnitSystem::us) == "3000 bu/h");
}

TEST_CASE("Text for reading is rounded to what matters and never says minus zero") {
  CHECK(text_of(17.4 * 0.3048, Quantity::length, UnitSystem::us) == "17.4 ft");
  CHECK(text_of(GrainVolume::bushels(21713).as_cubic_metres(), Quantity::grain_volume, UnitSystem::us) == "21,713 bu");
  CHECK(text_of(37, Quantity::angle, UnitSystem::us) == "37.0°");
  CHECK(text_of(0.025, Quantity::grade, UnitSystem::metric) == "2.50%");
  CHECK(text_of(-0.001, Quantity::length, UnitSystem::us) == "0.0 ft");
  CHECK(signed_text_of(1, Quantity::length, UnitSystem::metric) == "+1.00 m");
}
