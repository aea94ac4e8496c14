// What is planned and spoils growth, in yards where who does it is known by how they are drawn.
#include "geom/grow/foresight.hpp"

#include <set>

#include "geom/grow/grow.hpp"
#include "geom/grow/prover.hpp"
#include "geom/io/catalogs.hpp"
#include "tests/geom/grow/grow_yard.hpp"
#include "tests/scenes/crowded_yard.hpp"
#include "tests/scenes/demo_yards.hpp"
#include "tests/scenes/scene_builder.hpp"
#include "tests/scenes/scenes.hpp"

using namespace yardwright;
using namespace yardwright::grow;
using namespace yardwright::scenes;

namespace {

constexpr std::array foresight_rules{"grow.last-outlet", "grow.last-spot", "grow.last-way", "grow.later-ground"};

/// All of Grow, by a check of its own.
Findings told_of(const Site& site, const std::vector<Item>& later = {}, const Thing* sought = nullptr,
                 bool with_mends = true) {
  const GrowYard yard{site};
  return ask(yard.site, yard.answers, in_force(site, shipped_catalogs()), sought, MendSearch{with_mends}, later)
      .findings;
}

Findings of_rule(const Findings& all, std::string_view rule) {
  Findings some;
  std::ranges::copy_if(all, std::back_inserter(some), [&](const Finding& one) { return one.rule == rule; });
  return some;
}

Finding the_one(const Findings& all, std::string_view rule) {
  const Findings some = of_rule(all, rule);
  REQUIRE(some.size() == 1);
  return some.front();
}

bool wants(const Findings& all, const std::string& id) {
  return std::ranges::any_of(all, [&](const Finding& one) { return one.id == id && is_wanting(one); });
}

Site without_items(Site site, const std::vector<ItemId>& items) {
  for (const ItemId id : items) site = yardwright::apply(std::move(site), RemoveItem{id});
  return site;
}

/// Its culprits taken away, and its mends applied: it is gone, and nothing wants that did not before.
void check_culprits(const Site& site, const std::vector<Item>& later, const Finding& finding, const Thing& sought) {
  INFO(finding.title);
  REQUIRE_FALSE(finding.items.empty());
  CHECK_FALSE(wants(told_of(without_items(site, finding.items), later, &sought, false), finding.id));
  const Findings before = told_of(site, later, &sought, false);
  for (const Mend& mend : finding.mends) {
    INFO(mend.action);
    const Findings after = told_of(yardwright::apply(site, mend.edits), later, &sought, false);
    CHECK_FALSE(wants(after, finding.id));
    for (const Finding& one : after) {
      INFO(one.id);
      if (is_wanting(one)) CHECK(wants(before, one.id));
    }
  }
}

/// A leg, a bin of today, one that is planned, and a tank of the same phase far from both.
Site yard_with_outlets(int outlets) {
  Site bare;
  bare.lot = rectangular_lot(160, 100, LotEdge::own_field);
  bare.phases = {"today", "one more"};
  SceneBuilder yard{bare};
  const ItemId leg = yard.add("Leg", Leg{.at = {50, 50}, .discharge_height_m = 30, .outlets = outlets});
  yard.spout(leg, yard.add("Old", Bin{.at = {62, 50}, .diameter_m = 8, .eave_height_m = 6}));
  const ItemId planned = yard.add("Planned", Bin{.at = {38, 50}, .diameter_m = 8, .eave_height_m = 6}, 1);
  yard.spout(leg, planned, GrainState::dry, 1);
  yard.add("Tank", Tank{.at = {150, 90}}, 1);
  return yard.site();
}

/// Bins of 10 m in a strip as wide as one and 4 m, their middles on 18 by 4 m: room for a second that touches the first where
/// that stands at an end, none where it stands in the middle: sqrt(9^2 + 2^2) = 9.2 m from the farthest corner.
Site strip_with_bin_at(double east_m) {
  Site bare;
  bare.lot = rectangular_lot(28, 14, LotEdge::own_field);
  bare.phases = {"today", "one more"};
  SceneBuilder yard{bare};
  yard.add("Planned", Bin{.at = {east_m, 7}, .diameter_m = 10}, 1);
  return yard.site();
}

/// As in the tests of lanes: the dump's west end is reached only between two bins, the upper of which is planned.
Site halves_with_gap(double gap_m) {
  Site bare;
  bare.lot = rectangular_lot(100, 80);
  bare.phases = {"today", "one more"};
  SceneBuilder yard{bare};
  yard.add("Gate", Gate{.at = {80, 0}, .facing = Bearing::degrees(0), .width_m = 9});
  yard.add("Dump", Receiving{.at = {50, 40}, .facing = Bearing::degrees(90), .length_m = 10, .width_m = 6});
  yard.add("North wall", Building{.at = {50, 62}, .length_m = 39, .width_m = 3});
  yard.add("South wall", Building{.at = {50, 26.5}, .length_m = 23, .width_m = 3});
  yard.add("At the edge", Bin{.at = {50, 4}, .diameter_m = 8});
  yard.add("Planned", Bin{.at = {50, 12 + gap_m}, .diameter_m = 8}, 1);
  yard.add("Tank", Tank{.at = {95, 75}}, 1);
  return yard.site();
}

ItemId named(const Site& site, std::string_view name) {
  for (const Item& item : site.items) {
    if (item.name == name) return item.id;
  }
  return {};
}

}  // namespace

TEST_CASE("The bin that takes the last outlet is named, and a larger distributor or its going gives one back") {
  const Site site = yard_with_outlets(2);
  const Finding taken = the_one(told_of(site), "grow.last-outlet");
  CHECK(taken.verdict == Verdict::caution);
  CHECK(taken.measured == 0);
  CHECK(taken.items == std::vector{named(site, "Planned")});
  CHECK(taken.title == "Planned takes the last outlet for more bins");
  REQUIRE(taken.mends.size() == 1);
  CHECK(taken.mends.front().becomes == 3);
  check_culprits(site, {}, taken, next_bin(site));
  const Finding left = the_one(told_of(yard_with_outlets(3)), "grow.last-outlet");
  CHECK(left.verdict == Verdict::pass);
  CHECK(left.measured == 1);
  // With two spouts on one outlet, none is left without it either.
  CHECK(the_one(told_of(yard_with_outlets(1)), "grow.last-outlet").verdict == Verdict::not_checked);
}

TEST_CASE("Where no outlet was left before, nothing planned takes the last, and that is said") {
  Site site = yard_with_outlets(1);
  site = yardwright::apply(site, RemoveItem{named(site, "Planned")});
  const Finding none = the_one(told_of(site), "grow.last-outlet");
  CHECK(none.verdict == Verdict::not_checked);
  CHECK(none.items.empty());
  CHECK(none.note == "there was no outlet left before \"one more\" either, so it can take none");
}

TEST_CASE("Where two planned bins must both go for an outlet to be left, both are named") {
  Site site = yard_with_outlets(2);
  SceneBuilder more{site};
  const ItemId second = more.add("Second", Bin{.at = {50, 70}, .diameter_m = 8, .eave_height_m = 6}, 1);
  more.spout(named(site, "Leg"), second, GrainState::dry, 1);
  const Finding taken = the_one(told_of(more.site()), "grow.last-outlet");
  CHECK(taken.items == std::vector{named(site, "Planned"), second});
  CHECK(taken.title == "Planned and Second take the last outlet for more bins");
  check_culprits(more.site(), {}, taken, next_bin(site));
}

TEST_CASE("The bin that takes the last place is named, and moved to where the next one has room beside it") {
  const Site site = strip_with_bin_at(14);
  const Finding taken = the_one(told_of(site), "grow.last-spot");
  CHECK(taken.verdict == Verdict::caution);
  CHECK(taken.items == std::vector{named(site, "Planned")});
  CHECK(taken.title == "Planned takes the last place for the next bin");
  REQUIRE(taken.mends.size() == 1);
  check_culprits(site, {}, taken, next_bin(site));
  for (const double east_m : {5.0, 23.0})
    CHECK(the_one(told_of(strip_with_bin_at(east_m)), "grow.last-spot").verdict == Verdict::pass);
  Site narrow = site;
  narrow.lot = rectangular_lot(28, 9, LotEdge::own_field);
  CHECK(the_one(told_of(narrow), "grow.last-spot").verdict == Verdict::not_checked);
}

TEST_CASE("The bin that closes the only loop to the dump is named, with the width that is left") {
  const double lane_m = 14 * ft;
  const Site site = halves_with_gap(lane_m - 0.2 * ft);
  const Finding taken = the_one(told_of(site), "grow.last-way");
  CHECK(taken.verdict == Verdict::caution);
  CHECK(taken.items == std::vector{named(site, "Planned")});
  CHECK(taken.title == "Planned takes the last lane for trucks to one end of Dump");
  CHECK(taken.required == Approx(lane_m));
  CHECK(taken.measured <= lane_m - 0.2 * ft + 1e-6);
  CHECK(taken.measured > lane_m - 0.2 * ft - 0.04);
  REQUIRE(taken.mends.size() == 1);
  check_culprits(site, {}, taken, next_bin(site));
  const Finding kept = the_one(told_of(halves_with_gap(lane_m + 0.2 * ft)), "grow.last-way");
  CHECK(kept.verdict == Verdict::pass);
  CHECK(kept.measured <= lane_m + 0.2 * ft);
}

TEST_CASE("What is planned before a gate shuts it off; what stands today never does") {
  SceneBuilder planned{halves_with_gap(7)}, built{halves_with_gap(7)};
  const Thing shed = Building{.at = {80, 5}, .facing = Bearing::degrees(90), .length_m = 9, .width_m = 4};
  const ItemId id = planned.add("Shed", shed, 1);
  built.add("Shed", shed, 0);
  const Finding shut = the_one(told_of(planned.site()), "grow.last-way");
  CHECK(shut.items == std::vector{id});
  CHECK(shut.title == "Shed shuts Gate off from the dump");
  check_culprits(planned.site(), {}, shut, next_bin(planned.site()));
  CHECK(the_one(told_of(built.site()), "grow.last-way").verdict == Verdict::not_checked);
}

TEST_CASE("What stands where something is built later is named and moved off, and what is gone by then is not") {
  Site whole = new_yard();
  whole.phases = {"first build", "a shed", "two more bins"};
  SitePoint place;
  for (Item& item : whole.items) {
    if (item.phase == 1) item.phase = 2;
    if (item.name == "Store 4") place = place_of(item.thing);
  }
  whole.items.push_back({next_id(whole), "Shed", 1, {}, Building{.at = place + SiteVector{4, 3}}});
  const ItemId shed = whole.items.back().id;
  const std::vector<Item> later = built_after(whole, 1);
  const Site site = as_of(whole, 1);
  const Finding lies = the_one(told_of(site, later), "grow.later-ground");
  CHECK(lies.verdict == Verdict::caution);
  CHECK(lies.items == std::vector{shed});
  CHECK(lies.title == "Shed stands on ground that Store 4 needs later");
  CHECK(lies.measured < 0);
  REQUIRE(lies.mends.size() == 1);
  check_culprits(site, later, lies, next_bin(site));
  CHECK(the_one(told_of(whole), "grow.later-ground").items == lies.items);
  // As of the first phase neither stands yet: what two later phases have against each other is for the later one.
  for (const Finding& one : of_rule(told_of(as_of(whole, 0), built_after(whole, 0)), "grow.later-ground"))
    CHECK(one.verdict == Verdict::pass);
  whole.items.back().gone_in = 2;
  CHECK(the_one(told_of(as_of(whole, 1), built_after(whole, 1)), "grow.later-ground").verdict == Verdict::pass);
}

TEST_CASE("The ground of a later bin ends at the distance that bins keep") {
  const double apart_m = shipped_catalogs().rules.at("clear.bin-bin").value;
  for (const double off_m : {-0.01, 0.0, 0.01}) {
    Site bare;
    bare.lot = rectangular_lot(100, 100, LotEdge::own_field);
    bare.phases = {"today", "later"};
    SceneBuilder yard{bare};
    yard.add("Now", Bin{.at = {40, 50}, .diameter_m = 10});
    yard.add("Then", Bin{.at = {50 + apart_m + off_m, 50}, .diameter_m = 10}, 1);
    const Site whole = yard.site();
    const Finding one = the_one(told_of(as_of(whole, 0), built_after(whole, 0)), "grow.later-ground");
    CHECK((one.verdict == Verdict::pass) == (off_m >= 0));
    CHECK(one.measured == Approx(apart_m + off_m));
    if (off_m < 0) CHECK(one.title == "Now stands too near to where Then is built later");
  }
}

TEST_CASE(
    "A yard of one phase is asked nothing of this, and every rule that could be asked of one with two is told once") {
  for (const char* rule : foresight_rules) CHECK(of_rule(told_of(as_of(new_yard(), 0)), rule).empty());
  for (const Site& site : {old_yard(), new_yard()}) {
    const Findings all = told_of(site);
    for (const char* rule : foresight_rules) CHECK(the_one(all, rule).verdict == Verdict::pass);
  }
}

TEST_CASE("In crowded yards everything named is gone without its culprits, and every mend holds") {
  int named_in_all = 0, mended = 0;
  std::set<std::string> rules;
  for (const auto& [seed, phase] : {std::pair{1u, 1}, {2u, 1}, {5u, 1}, {13u, 2}}) {
    SceneBuilder yard{crowded_yard(seed)};
    yard.add("In", Gate{.at = {30, 0}, .width_m = 8});
    yard.add("Out", Gate{.at = {120, 0}, .width_m = 8});
    yard.add("Dump", Receiving{.at = {75, 30}, .facing = Bearing::degrees(90)});
    Site whole = yard.site();
    whole.phases = {"today", "next", "last"};
    int bins = 0;
    for (Item& item : whole.items) {
      if (as<Bin>(item) != nullptr) item.phase = ++bins > 3 ? 2 : bins > 1 ? 1 : 0;
      if (as<Building>(item) != nullptr || as<Dryer>(item) != nullptr) item.phase = 1;
    }
    for (Item& item : whole.items) {
      if (const Spout* spout = as<Spout>(item)) item.phase = find(whole, spout->to)->phase;
      if (Leg* leg = std::get_if<Leg>(&item.thing)) leg->outlets = 3;
    }
    const Site site = as_of(whole, phase);
    const std::vector<Item> later = built_after(whole, phase);
    const Thing sought = Bin{.diameter_m = 7, .eave_height_m = 5};
    for (const Finding& one : told_of(site, later, &sought)) {
      if (!is_wanting(one) || std::ranges::count(foresight_rules, one.rule) == 0) continue;
      INFO(seed);
      ++named_in_all;
      rules.insert(one.rule);
      mended += one.mends.empty() ? 0 : 1;
      check_culprits(site, later, one, sought);
    }
  }
  CHECK(named_in_all > 8);
  CHECK(mended > 5);
  CHECK(rules.size() == foresight_rules.size());
}
