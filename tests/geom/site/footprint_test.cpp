#include "geom/site/footprint.hpp"

#include <catch2/catch.hpp>
#include <random>

using namespace yardwright;

namespace {

/// The kind with lines and rings that have some shape.
Thing shaped(Thing thing) {
  const SitePath bent{{0, 0}, {20, 0}, {20, 15}, {3, 18}};
  std::visit(
      [&](auto& kind) {
        if constexpr (requires { kind.path; }) kind.path = bent;
        if constexpr (requires { kind.outline; }) kind.outline = bent;
        if constexpr (requires { kind.at; }) kind.at = {7, 9};
      },
      thing);
  return thing;
}

}  // namespace

TEST_CASE("Every kind has a key of its own and comes back by it") {
  for (const Thing& thing : every_kind()) {
    const auto again = thing_of_kind(kind_key(thing));
    REQUIRE(again.has_value());
    CHECK(again->index() == thing.index());
  }
  CHECK_FALSE(thing_of_kind("no-such-kind").has_value());
}

TEST_CASE("Every kind's defaults lie within the bounds of its own fields") {
  for (const Thing& thing : every_kind()) {
    std::visit(
        [](const auto& kind) {
          visit_fields(kind, [&](const Field& field, const auto& member) {
            if constexpr (std::same_as<std::remove_cvref_t<decltype(member)>, double>) {
              INFO(kind.key << "." << field.key);
              CHECK(member >= field.least);
              CHECK(member <= field.most);
            }
          });
        },
        thing);
  }
}

TEST_CASE("Moving there and back, and turning four quarter turns, brings every kind back") {
  for (const Thing& kind : every_kind()) {
    const Thing thing = shaped(kind);
    INFO(kind_key(thing));
    CHECK(moved(moved(thing, {3, -4}), {-3, 4}) == thing);
    Thing round = thing;
    for (int i = 0; i < 4; ++i) round = turned(round, {1, 2}, Angle::degrees(90));
    CHECK(round == thing);
  }
}

TEST_CASE("A moved thing's place and extent move along, for every kind that has a place") {
  for (const Thing& kind : every_kind()) {
    if (std::holds_alternative<Spout>(kind)) continue;  // its place follows from what it joins
    const Thing thing = shaped(kind);
    INFO(kind_key(thing));
    const Thing there = moved(thing, {100, 50});
    CHECK(distance(place_of(there), place_of(thing) + SiteVector{100, 50}) < 1e-9);
    CHECK(distance(box_of(extent(there)).low, box_of(extent(thing)).low + SiteVector{100, 50}) < 1e-6);
  }
}

TEST_CASE("A pit is there where it has a depth") {
  Leg leg;
  CHECK(pit_hole(leg).has_value());
  leg.boot.depth_m = 0;
  CHECK_FALSE(pit_hole(leg).has_value());
  CHECK(pit_body(Thing{leg}) == nullptr);
  CHECK_FALSE(pit_hole(Bin{}).has_value());
}
