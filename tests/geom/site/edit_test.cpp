#include "geom/site/edit.hpp"

#include <catch2/catch.hpp>

#include "tests/scenes/scenes.hpp"

using namespace yardwright;
using namespace yardwright::scenes;

TEST_CASE("Putting an item adds it, or takes the place of the one with its id") {
  Site site = one_bin_yard(70, 30);
  Item other = site.items[1];
  other.name = "Renamed";
  const Site renamed = apply(site, PutItem{other});
  CHECK(renamed.items.size() == 3);
  CHECK(renamed.items[1].name == "Renamed");
  other.id = next_id(site);
  CHECK(apply(site, PutItem{other}).items.size() == 4);
}

TEST_CASE("Removing a bin takes its spouts along and frees the stops and conveyors that named it") {
  Site site = one_bin_yard(70, 30);
  site.items.push_back({{4}, "", 0, std::nullopt, Route{.stops = {bin_id, leg_id}}});
  site.items.push_back({{5}, "", 0, std::nullopt, Conveyor{.from = bin_id, .to = leg_id}});
  const Site without_bin = apply(site, RemoveItem{bin_id});
  CHECK(find(without_bin, bin_id) == nullptr);
  CHECK(find(without_bin, spout_id) == nullptr);
  CHECK(as<Route>(*find(without_bin, {4}))->stops == std::vector<ItemId>{leg_id});
  CHECK(as<Conveyor>(*find(without_bin, {5}))->from == ItemId{});
  CHECK(as<Conveyor>(*find(without_bin, {5}))->to == leg_id);
}

TEST_CASE("A rule's own value is set once, kept in order, and cleared again") {
  const Site site = apply(apply(Site{}, SetRule{{"b", 1, Basis::local, ""}}), SetRule{{"a", 2, Basis::local, ""}});
  REQUIRE(site.rule_overrides.size() == 2);
  CHECK(site.rule_overrides.front().rule == "a");
  CHECK(apply(site, SetRule{{"a", 3, Basis::local, ""}}).rule_overrides.front().value == 3);
  CHECK(apply(apply(site, ClearRule{"a"}), ClearRule{"b"}) == Site{});
}

TEST_CASE("A site as of a phase leaves out what is built later and what is gone by then") {
  Site site = one_bin_yard(70, 30);
  site.items[1].phase = 2;
  site.items[0].gone_in = 1;
  CHECK(as_of(site, 0).items.size() == 2);
  CHECK(as_of(site, 1).items.size() == 1);
  CHECK(as_of(site, 2).items.size() == 2);
}
