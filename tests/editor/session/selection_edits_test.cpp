#include "editor/session/selection_edits.hpp"

#include <catch2/catch.hpp>

#include "geom/site/footprint.hpp"

using namespace yardwright;

namespace {

Site leg_bin_spout() {
  Site site;
  Bin bin;
  bin.at = {20, 0};
  Spout spout;
  spout.from = {1};
  spout.to = {2};
  site.items = {{{1}, "Leg", 0, {}, Leg{}}, {{2}, "Bin", 0, {}, bin}, {{3}, "", 0, {}, spout}};
  return site;
}

}  // namespace

TEST_CASE("Moving there and back gives the same site") {
  const Site site = leg_bin_spout();
  const session::Selection all{{1}, {2}, {3}};
  const Site there = yardwright::apply(site, session::moved(site, all, {5, -3}));
  CHECK(place_of(find(there, {2})->thing) == SitePoint{25, -3});
  CHECK(yardwright::apply(there, session::moved(there, all, {-5, 3})) == site);
}

TEST_CASE("Four quarter turns about the middle of the selection change no place") {
  Site site = leg_bin_spout();
  const session::Selection all{{1}, {2}};
  for (int i = 0; i < 4; ++i) site = yardwright::apply(site, session::turned(site, all, Angle::degrees(90)));
  CHECK(distance(place_of(find(site, {2})->thing), {20, 0}) < 1e-9);
}

TEST_CASE("Copies of joined things are joined to each other") {
  const Site site = leg_bin_spout();
  const auto copies = session::duplicated(site, {{1}, {2}, {3}}, {0, 50}, 0);
  const Site after = yardwright::apply(site, copies.edits);
  REQUIRE(after.items.size() == 6);
  const Spout& spout = std::get<Spout>(find(after, copies.copies[2])->thing);
  CHECK(spout.from == copies.copies[0]);
  CHECK(spout.to == copies.copies[1]);
}

TEST_CASE("A copied spout alone still joins the originals") {
  const Site site = leg_bin_spout();
  const Site after = yardwright::apply(site, session::duplicated(site, {{3}}, {0, 50}, 0).edits);
  CHECK(std::get<Spout>(after.items.back().thing).to == ItemId{2});
}

TEST_CASE("Nothing selected is no edit") {
  CHECK(session::moved(leg_bin_spout(), {}, {1, 1}).empty());
  CHECK(session::moved(leg_bin_spout(), {{99}}, {1, 1}).empty());
  CHECK(session::still_there(leg_bin_spout(), {{2}, {99}}) == session::Selection{{2}});
}
