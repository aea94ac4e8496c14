#include "geom/grow/room.hpp"

#include "geom/grow/grow.hpp"
#include "geom/grow/leg_heights.hpp"
#include "tests/geom/grow/grow_yard.hpp"
#include "tests/scenes/crowded_yard.hpp"
#include "tests/scenes/demo_yards.hpp"
#include "tests/scenes/scene_builder.hpp"

using namespace yardwright;
using namespace yardwright::grow;
using namespace yardwright::scenes;

namespace {

Site with_outlets(Site site, int outlets) {
  for (Item& item : site.items) {
    if (Leg* leg = std::get_if<Leg>(&item.thing)) leg->outlets = outlets;
  }
  return site;
}

/// Every finding that is about something new and fails, or that advises where nothing but free ground was used.
void check_passes(const Newcomer& newcomer, const Room& room) {
  const Site built = yardwright::apply(newcomer.site, built_at(newcomer, room.places));
  const Answers answers = check(built, shipped_catalogs());
  for (const Finding& finding : all_findings(answers)) {
    if (finding.question == Question::drain || finding.rule == "reach.free-span") continue;
    const bool about = std::ranges::any_of(finding.items, [&](ItemId id) { return id >= newcomer.item.id; });
    const bool bad = finding.verdict == Verdict::fail || (room.of_free_ground && finding.verdict == Verdict::caution);
    INFO(finding.id << ": " << finding.title);
    CHECK_FALSE((about && bad));
  }
}

}  // namespace

TEST_CASE("All that fits at once passes the yard's own checks when it is built") {
  int placed = 0;
  std::vector<Site> sites{with_outlets(new_yard(), 24), with_outlets(old_yard(), 12)};
  for (const unsigned seed : {1u, 2u, 3u, 5u, 8u, 13u, 21u}) sites.push_back(with_outlets(crowded_yard(seed), 10));
  for (const Site& site : sites) {
    const GrowYard yard{site};
    const Newcomer newcomer = yard.with(Bin{.diameter_m = 6, .eave_height_m = 6});
    const Room room = room_for(newcomer, allowed_region(newcomer), {.tries = 4});
    INFO(site.name << ": " << room.places.size() << " of at most " << room.at_most);
    CHECK(static_cast<int>(room.places.size()) <= room.at_most);
    check_passes(newcomer, room);
    placed += static_cast<int>(room.places.size());
  }
  CHECK(placed > 40);
}

TEST_CASE("A bare lot takes rows of bins by their spacing") {
  Site site;
  site.lot = rectangular_lot(60, 14, LotEdge::own_field);
  const GrowYard yard{site};
  // 10 m wide with 2 m between them, in a strip 14 m wide: centres over 50 m in steps of 12, in one row or staggered by 4 m.
  Site wide = yardwright::apply(site, SetRule{{"clear.bin-bin", 2.0, Basis::local, "set here"}});
  wide = yardwright::apply(wide, SetRule{{"clear.fan-room", 0.0, Basis::local, "set here"}});
  wide = yardwright::apply(wide, SetRule{{"clear.unload-room", 0.0, Basis::local, "set here"}});
  const GrowYard asked{wide};
  const Newcomer bin = asked.with(Bin{.diameter_m = 10});
  const Room room = room_for(bin, allowed_region(bin));
  CHECK(room.places.size() == 5);  // sqrt(12^2 - 4^2) = 11.3 m along at least: 1 + floor(50 / 11.3)
  CHECK(room.at_most >= 5);
}

TEST_CASE("A taller leg reaches no less") {
  const GrowYard yard{old_yard()};
  const Thing thing = next_bin(yard.site);
  const Newcomer newcomer = yard.with(thing);
  ItemId leg;
  for_each<Leg>(yard.site, [&](const Item& item, const Leg&) { leg = item.id; });
  const auto heights = at_heights(newcomer, leg, 4);
  REQUIRE(heights.size() == 5);
  for (std::size_t i = 1; i < heights.size(); ++i) {
    CHECK(heights[i].discharge_m > heights[i - 1].discharge_m);
    CHECK(heights[i].reached_m2 >= heights[i - 1].reached_m2);
  }
  CHECK(at_heights(newcomer, ItemId{9999}, 4).empty());
}

TEST_CASE("Grow answers with the room of the next bin, and says what it lacks") {
  const GrowYard yard{new_yard()};
  Catalogs catalogs = shipped_catalogs();
  const Answer found = ask(yard.site, yard.answers, catalogs);
  REQUIRE_FALSE(found.findings.empty());
  CHECK(found.spots.size() > 1);
  for (const Finding& finding : found.findings) CHECK(catalogs.rules.has(finding.rule));
  Site no_lot = yard.site;
  no_lot.lot = {};
  const Answer none = ask(no_lot, yard.answers, catalogs);
  CHECK(none.findings.front().verdict == Verdict::not_checked);
}

TEST_CASE("A leg without outlets and a leg too short are told, with what mends them") {
  Site site;
  site.lot = rectangular_lot(100, 100, LotEdge::own_field);
  SceneBuilder yard{site};
  const ItemId leg = yard.add("", Leg{.at = {50, 50}, .discharge_height_m = 12, .outlets = 1});
  const ItemId bin = yard.add("", Bin{.at = {62, 50}, .diameter_m = 12, .eave_height_m = 9});
  yard.spout(leg, bin);
  Catalogs catalogs = shipped_catalogs();
  const auto verdict = [&](const Site& asked_of, std::string_view rule) {
    const GrowYard one{asked_of};
    const Answer answer = ask(one.site, one.answers, catalogs);
    const auto found = std::ranges::find(answer.findings, rule, &Finding::rule);
    REQUIRE(found != answer.findings.end());
    return *found;
  };
  const Finding outlets = verdict(yard.site(), "grow.outlets-left");
  CHECK(outlets.verdict == Verdict::caution);
  REQUIRE(outlets.mends.size() == 1);
  const Site mended = yardwright::apply(yard.site(), outlets.mends.front().edits);
  CHECK(verdict(mended, "grow.outlets-left").verdict == Verdict::pass);
  const Finding room = verdict(mended, "grow.room");
  CHECK(room.verdict == Verdict::caution);
  REQUIRE(room.mends.size() == 1);
  CHECK(room.note.find("too far from every leg") != std::string::npos);
  const Site taller = yardwright::apply(mended, room.mends.front().edits);
  CHECK(verdict(taller, "grow.room").measured >= 0);
  CHECK_FALSE(allowed_region(GrowYard{taller}.with(next_bin(taller))).bearable.empty());
}
