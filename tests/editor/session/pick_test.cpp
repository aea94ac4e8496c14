#include "editor/session/pick.hpp"

#include <catch2/catch.hpp>

#include "geom/site/edit.hpp"

using namespace yardwright;
using namespace yardwright::session;

namespace {

Site with(std::vector<Thing> things) {
  Site site;
  for (Thing& thing : things) site.items.push_back({next_id(site), "", 0, {}, std::move(thing)});
  return site;
}

Bin bin_at(SitePoint at, double diameter_m = 10) {
  Bin bin;
  bin.at = at;
  bin.diameter_m = diameter_m;
  return bin;
}

Drive drive(SitePath path) {
  Drive made;
  made.path = std::move(path);
  return made;
}

}  // namespace

TEST_CASE("A click inside a bin picks it, one beside it does not") {
  const Site site = with({bin_at({0, 0})});
  CHECK(pick(site, {3, 3}, 0.5) == ItemId{1});
  CHECK(pick(site, {5.3, 0}, 0.5) == ItemId{1});
  CHECK(pick(site, {6, 0}, 0.5) == ItemId{});
}

TEST_CASE("What stands on a drive is picked before the drive") {
  const Site site = with({bin_at({0, 0}, 4), drive({{-50, 0}, {50, 0}})});
  CHECK(pick(site, {0, 0}, 0.5) == ItemId{1});
  CHECK(pick(site, {20, 1}, 0.5) == ItemId{2});
}

TEST_CASE("A spout is picked on its line between what it joins") {
  Leg leg;
  Spout spout;
  spout.from = {1};
  spout.to = {2};
  const Site site = with({leg, bin_at({40, 0}), spout});
  CHECK(pick(site, {20, 0.2}, 0.5) == ItemId{3});
  CHECK(pick(site, {38, 0}, 0.5) == ItemId{2});
}

TEST_CASE("A spout without its ends is never picked") {
  Spout spout;
  spout.from = {7};
  spout.to = {8};
  CHECK(pick(with({spout}), {0, 0}, 5) == ItemId{});
}

TEST_CASE("A box catches what lies wholly inside it") {
  const Site site = with({bin_at({0, 0}), bin_at({30, 0})});
  CHECK(inside(site, {{-6, -6}, {27, 6}}) == std::vector<ItemId>{{1}});
  CHECK(inside(site, {{-6, -6}, {36, 6}}).size() == 2);
  CHECK(inside(Site{}, {{-6, -6}, {36, 6}}).empty());
}

TEST_CASE("Drawings that have just begun are no trap for a click") {
  Pad pad;
  pad.outline = {{0, 0}, {1, 0}};
  CHECK(pick(with({drive({}), drive({{0, 0}}), pad}), {0, 0}, 1) == ItemId{});
}

TEST_CASE("A picture is taken by its edge alone, so that what is traced over it can be clicked") {
  Site site;
  Picture picture;
  picture.at = {50, 50};
  picture.proportion_ratio = 0.5;
  site.items.push_back({{1}, "", 0, {}, picture});
  CHECK_FALSE(session::pick(site, {50, 50}, 1));
  CHECK(session::pick(site, {50, 75.5}, 1) == ItemId{1});
  CHECK(session::pick(site, {0, 50}, 1) == ItemId{1});
  CHECK_FALSE(session::pick(site, {50, 99}, 1));
}
