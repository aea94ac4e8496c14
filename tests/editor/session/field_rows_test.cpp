#include "editor/session/field_rows.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

#include "geom/io/catalogs.hpp"

using namespace yardwright;
using namespace yardwright::session;

TEST_CASE("A length is typed in feet or metres, whatever the site's units") {
  const Thing bin = Bin{};
  CHECK(std::get<Bin>(with_field(bin, "diameter", "36ft", UnitSystem::metric).value()).diameter_m == Approx(10.9728));
  CHECK(std::get<Bin>(with_field(bin, "diameter", "11m", UnitSystem::us).value()).diameter_m == Approx(11));
  CHECK(std::get<Bin>(with_field(bin, "diameter", "42", UnitSystem::us).value()).diameter_m == Approx(12.8016));
  CHECK(std::get<Bin>(with_field(bin, "roof", "9:12", UnitSystem::us).value()).roof_slope.as_degrees() ==
        Approx(36.8699));
}

TEST_CASE("The text of every field of every kind, typed in again, reads the same") {
  for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
    for (const Thing& thing : every_kind()) {
      for (const FieldRow& row : field_rows(thing, units, shipped_catalogs())) {
        if (row.kind == RowKind::line) continue;
        CAPTURE(kind_key(thing), row.key, row.text);
        const auto again = with_field(thing, row.key, row.text, units);
        REQUIRE(again.has_value());
        const auto rows = field_rows(*again, units, shipped_catalogs());
        CHECK(std::ranges::find(rows, row.key, &FieldRow::key)->text == row.text);
      }
    }
  }
}

TEST_CASE("A length of whole feet reads so, whatever its last binary digit") {
  const auto rows = field_rows(Leg{}, UnitSystem::us, shipped_catalogs());
  CHECK(std::ranges::find(rows, "distributor-drop", &FieldRow::key)->text == "6 ft");
}

TEST_CASE("Every offered choice is taken") {
  for (const Thing& thing : every_kind()) {
    for (const FieldRow& row : field_rows(thing, UnitSystem::us, shipped_catalogs())) {
      for (const Choice& choice : row.choices)
        CHECK(with_field(thing, row.key, choice.value, UnitSystem::us).has_value());
    }
  }
}

TEST_CASE("What cannot be taken is refused with the field, the fault and the mend") {
  const auto small = with_field(Bin{}, "diameter", "1 ft", UnitSystem::us);
  REQUIRE_FALSE(small.has_value());
  CHECK(small.error().where == "diameter");
  CHECK(small.error().mend.find("at least") != std::string::npos);
  for (const char* text : {"", "wide", "36 acres", "-4 ft", "1e9 ft"}) {
    CAPTURE(text);
    CHECK_FALSE(with_field(Bin{}, "diameter", text, UnitSystem::us).has_value());
  }
  CHECK_FALSE(with_field(Bin{}, "floor", "wooden", UnitSystem::us).has_value());
  CHECK_FALSE(with_field(Leg{}, "outlets", "2.5", UnitSystem::us).has_value());
  CHECK_FALSE(with_field(Bin{}, "no-such-field", "1", UnitSystem::us).has_value());
}

TEST_CASE("Fields of a part are reached by their path") {
  const auto leg = with_field(Leg{}, "boot-pit.depth", "9 ft", UnitSystem::us);
  REQUIRE(leg.has_value());
  CHECK(std::get<Leg>(*leg).boot.depth_m == Approx(2.7432));
}

TEST_CASE("References are taken by number and stops as a list") {
  CHECK(std::get<Spout>(with_field(Spout{}, "to", "12", UnitSystem::us).value()).to == ItemId{12});
  const auto route = with_field(Route{}, "stops", "3 1 3", UnitSystem::us);
  REQUIRE(route.has_value());
  CHECK(std::get<Route>(*route).stops == std::vector<ItemId>{{3}, {1}, {3}});
  CHECK_FALSE(with_field(Route{}, "stops", "3 gate", UnitSystem::us).has_value());
}

TEST_CASE("Lengths are shown to a hundredth of their unit, short ones whole, and keys as they are spoken") {
  CHECK(text_for_typing(4.877, Quantity::length, UnitSystem::us) == "16 ft");
  CHECK(text_for_typing(15, Quantity::length, UnitSystem::us) == "49.21 ft");
  CHECK(text_for_typing(15.0004, Quantity::length, UnitSystem::metric) == "15 m");
  CHECK(spoken("lp-gas") == "LP gas");
  CHECK(spoken("c") == "C");
  CHECK(spoken("own-field") == "own field");
}
