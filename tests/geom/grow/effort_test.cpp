// Worked by hand from the book's values (common practice, no source): 30 ft for what stands, 3 ft a quarter turn, a leg's height
// twice, other sizes four times, a way a quarter, a pad twenty times its height, half a berm's length.
#include "geom/grow/effort.hpp"

#include <catch2/catch.hpp>

#include "geom/grow/part_of_mend.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/site/edit.hpp"

using namespace yardwright;
using namespace yardwright::grow;

namespace {

constexpr double ft = 0.3048;

/// A thing of a phase, and it changed.
struct Case {
  Thing before, after;
  int phase = 1;

  Site site() const {
    Site yard;
    yard.items = {{ItemId{1}, "", phase, {}, before}};
    return yard;
  }
  Mend mend(double change = 0) const {
    return {"change it", Quantity::length, change, change, {PutItem{{ItemId{1}, "", phase, {}, after}}}};
  }
};

double effort_ft(const Case& one, double change_ft = 0) {
  return effort_m(one.site(), one.mend(change_ft * ft), shipped_catalogs().rules) / ft;
}

double effort_of_new_ft(const Thing& thing, double change_ft) {
  const Mend mend{
      "build it", Quantity::length, change_ft * ft, change_ft * ft, {PutItem{{ItemId{1}, "", 1, {}, thing}}}};
  return effort_m(Site{}, mend, shipped_catalogs().rules) / ft;
}

const Case moved_bin{Bin{}, Bin{.at = {3 * ft, 4 * ft}}};
const Case lower_bin{Bin{.eave_height_m = 24 * ft}, Bin{.eave_height_m = 22 * ft}};

}  // namespace

TEST_CASE("The effort of a change is a move's length, and what its way of changing is worth beside it") {
  CHECK(effort_ft(moved_bin) == Approx(5));
  CHECK(effort_ft({moved_bin.before, moved_bin.after, 0}) == Approx(35));
  CHECK(effort_ft({Bin{}, Bin{.fan_side = Bearing::degrees(0)}}) == Approx(3));
  CHECK(effort_ft({Bin{.fan_side = Bearing::degrees(350)}, Bin{.fan_side = Bearing::degrees(20)}}) == Approx(1));
  CHECK(effort_ft({Leg{.discharge_height_m = 90 * ft}, Leg{.discharge_height_m = 97 * ft}}) == Approx(14));
  CHECK(effort_ft(lower_bin) == Approx(8));
  CHECK(effort_ft({Spout{}, Spout{.supported = true}}) == Approx(15));
}

TEST_CASE("A truck's way is a line on paper, even where it is driven today") {
  const Route way{.path = {{0, 0}, {40 * ft, 0}, {80 * ft, 0}}};
  Route aside = way;
  aside.path[1].y = 12 * ft;
  CHECK(effort_ft({way, aside, 0}) == Approx(3));
  aside.path.push_back({90 * ft, 0});
  CHECK(effort_ft({way, aside, 0}, 20) == Approx(5));
}

TEST_CASE("New earth is worth its height under a bin and its length along a berm") {
  CHECK(effort_of_new_ft(Pad{}, 0.5) == Approx(10));
  CHECK(effort_of_new_ft(Berm{.path = {{0, 0}, {60 * ft, 0}}}, 1) == Approx(30));
  CHECK(effort_of_new_ft(Spout{}, 0) == Approx(15));
  CHECK(effort_of_new_ft(Spout{.supported = true}, 0) == Approx(30));
}

TEST_CASE("A part of a mend goes a part of the way, and turns the short way around") {
  const auto half = [](const Case& one, double change) {
    return part_of(one.mend(change), 0.5, one.site(), one.site());
  };
  const auto place = half(moved_bin, 5 * ft);
  REQUIRE(place.has_value());
  CHECK(place->change == Approx(2.5 * ft));
  CHECK(std::get<PutItem>(place->edits.front()).item.thing == Thing{Bin{.at = {1.5 * ft, 2 * ft}}});
  const auto turned = half({Bin{.fan_side = Bearing::degrees(350)}, Bin{.fan_side = Bearing::degrees(20)}}, 30);
  REQUIRE(turned.has_value());
  CHECK(as<Bin>(std::get<PutItem>(turned->edits.front()).item)->fan_side.as_degrees() == Approx(5));
}

TEST_CASE("Parts of two mends of one thing add up, and none goes beyond what its field allows") {
  const Site onto = yardwright::apply(moved_bin.site(), moved_bin.mend().edits);
  const auto both = part_of(lower_bin.mend(-2 * ft), 0.5, lower_bin.site(), onto);
  REQUIRE(both.has_value());
  const Bin& bin = *as<Bin>(std::get<PutItem>(both->edits.front()).item);
  CHECK(bin.eave_height_m == Approx(23 * ft));
  CHECK(bin.at == SitePoint{3 * ft, 4 * ft});
  CHECK_FALSE(part_of(lower_bin.mend(-2 * ft), 12, lower_bin.site(), lower_bin.site()).has_value());
}

TEST_CASE("Choices, counts and what is sold in sizes come whole") {
  for (const Case& one : {Case{Spout{}, Spout{.supported = true}}, Case{Leg{.outlets = 4}, Leg{.outlets = 6}},
                          Case{Bin{.diameter_m = 10}, Bin{.diameter_m = 11}},
                          Case{TileLine{.diameter_m = 0.1}, TileLine{.diameter_m = 0.15}}})
    CHECK_FALSE(comes_in_parts(one.site(), one.mend()));
  CHECK(comes_in_parts(moved_bin.site(), moved_bin.mend()));
}
