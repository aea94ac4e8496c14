// Phases against checks of their own: each state by a fresh check, what is in the way by taking it away and asking again.
#include "geom/grow/phases.hpp"

#include <catch2/catch.hpp>

#include "geom/grow/harm.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/io/price_book.hpp"
#include "geom/site/footprint.hpp"
#include "tests/scenes/demo_yards.hpp"
#include "tests/scenes/scene_builder.hpp"

using namespace yardwright;
using namespace yardwright::grow;
using namespace yardwright::scenes;

namespace {

PhasePlan told_of(const Site& whole) { return phases_of(whole, shipped_price_book(), shipped_catalogs()); }

bool wants(const Site& site, const std::string& id) {
  const Findings all = all_findings(check(site, shipped_catalogs()));
  return std::ranges::any_of(all, [&](const Finding& one) { return one.id == id && is_wanting(one); });
}

/// A shed of phase 1 where the new yard's bin of the same phase is to stand, which here is built in phase 2.
Site shed_in_the_way() {
  Site yard = new_yard();
  yard.phases = {"first build", "a shed", "two more bins"};
  SitePoint place;
  for (Item& item : yard.items) {
    if (item.phase == 1) item.phase = 2;
    if (item.name == "Store 4") place = place_of(item.thing);
  }
  yard.items.push_back({next_id(yard), "Shed", 1, {}, Building{.at = place + SiteVector{4, 3}}});
  return yard;
}

}  // namespace

TEST_CASE("A phase's answers are those of a fresh check of the yard as of it") {
  for (const Site& whole : {new_yard(), old_yard(), shed_in_the_way()}) {
    const PhasePlan plan = told_of(whole);
    REQUIRE(plan.steps.size() == whole.phases.size());
    for (const PhaseStep& step : plan.steps) {
      INFO(whole.name << " " << step.phase);
      const Site site = as_of(whole, step.phase);
      const Answers afresh = check(site, shipped_catalogs());
      const Option& option = plan.comparison.options[static_cast<std::size_t>(step.phase)];
      for (const Question question : every_question) {
        if (question != Question::grow) CHECK(findings_of(option.answers, question) == findings_of(afresh, question));
      }
      for (const Finding& one : step.broken) CHECK(wants(site, one.id));
      if (step.phase == 0) continue;
      for (const Finding& one : step.settled) {
        CHECK(wants(as_of(whole, step.phase - 1), one.id));
        CHECK_FALSE(wants(site, one.id));
      }
    }
  }
}

TEST_CASE("What newly wants in a phase did not want as much before") {
  for (const Site& whole : {old_yard(), shed_in_the_way()}) {
    const PhasePlan plan = told_of(whole);
    int told = 0;
    for (std::size_t i = 1; i < plan.steps.size(); ++i) {
      const Findings before = all_findings(check(as_of(whole, static_cast<int>(i) - 1), shipped_catalogs()));
      for (const Finding& one : plan.steps[i].broken) {
        ++told;
        const auto was = std::ranges::find(before, one.id, &Finding::id);
        INFO(one.id);
        CHECK((was == before.end() || one.verdict < was->verdict));
      }
    }
    CHECK(told > 0);
  }
}

TEST_CASE(
    "Without what stands in the way of a later phase its finding is gone, and it is told of what alone is the reason") {
  const Site whole = shed_in_the_way();
  const PhasePlan plan = told_of(whole);
  CHECK(plan.steps[1].hindrances.empty());
  const ItemId shed = whole.items.back().id;
  const auto& hindrances = plan.steps[2].hindrances;
  REQUIRE(std::ranges::any_of(hindrances, [&](const Hindrance& one) { return one.items == std::vector{shed}; }));
  const Site last = as_of(whole, 2);
  for (const Hindrance& one : hindrances) {
    INFO(one.finding.id);
    CHECK(wants(last, one.finding.id));
    Site without = last;
    for (const ItemId id : one.items) without = yardwright::apply(std::move(without), RemoveItem{id});
    CHECK_FALSE(wants(without, one.finding.id));
    CHECK(one.phase < 2);
  }
  CHECK(hindrance_words({{shed}, 1, {}}, whole) == "Shed, of \"a shed\"");
  // The yard as it was drawn has no shed, and nothing in the way.
  const PhasePlan drawn = told_of(new_yard());
  CHECK(drawn.steps[1].broken.empty());
  CHECK(drawn.steps[1].hindrances.empty());
}

TEST_CASE("What alone is no reason is told as a phase") {
  // An outlet for each of the five bins up to phase 1, and two more in phase 2: seven spouts, of which two must go.
  Site whole = new_yard();
  whole.phases.push_back("one pair too many");
  ItemId leg;
  for (Item& item : whole.items) {
    if (Leg* is = std::get_if<Leg>(&item.thing)) is->outlets = 5, leg = item.id;
  }
  SceneBuilder yard{whole};
  for (const double east_m : {130.0, 170.0})
    yard.spout(leg, yard.add("", Bin{.at = {east_m, 165}, .diameter_m = 5}, 2), GrainState::dry, 2);
  const PhasePlan plan = told_of(yard.site());
  CHECK(plan.steps[1].broken.empty());
  const std::string outlets = finding_id("reach.outlets", {leg});
  REQUIRE(std::ranges::count(plan.steps[2].broken, outlets, &Finding::id) == 1);
  int told = 0;
  for (const Hindrance& one : plan.steps[2].hindrances) {
    if (one.finding.id != outlets) continue;
    ++told;
    CHECK(one.phase == 1);
    CHECK(one.items == plan.steps[1].built);
    CHECK(hindrance_words(one, yard.site()) == "all that \"two more bins\" adds");
  }
  CHECK(told == 1);
}

TEST_CASE("What a phase builds and takes away are the yard's items before and after, and its cost is theirs") {
  Site whole = old_yard();
  for (Item& item : whole.items) {
    if (item.name == "Machine shed") item.gone_in = 1;
  }
  const PhasePlan plan = told_of(whole);
  for (const PhaseStep& step : plan.steps) {
    const Site after = as_of(whole, step.phase), before = step.phase == 0 ? Site{} : as_of(whole, step.phase - 1);
    CHECK(after.items.size() == before.items.size() + step.built.size() - step.gone.size());
    for (const ItemId id : step.built) CHECK((find(after, id) != nullptr && find(before, id) == nullptr));
    for (const ItemId id : step.gone) CHECK((find(after, id) == nullptr && find(before, id) != nullptr));
  }
  CHECK(plan.steps[1].gone.size() == 1);
  const QuantityChange change = quantity_change(as_of(whole, 0), as_of(whole, 1), shipped_catalogs());
  CHECK(plan.steps[1].change.built == change.built);
  CHECK(plan.steps[1].paid() == Approx(cost_of(change.built, shipped_price_book()).sum));
}

TEST_CASE("Of a leg that is drawn anew as it was nothing is paid") {
  Site whole = new_yard();
  whole.phases = {"first build", "the same leg"};
  std::erase_if(whole.items, [](const Item& item) { return item.phase > 0; });
  Item* old = nullptr;
  for (Item& item : whole.items) old = as<Leg>(item) != nullptr ? &item : old;
  old->gone_in = 1;
  Item fresh{next_id(whole), "Leg, raised", 1, {}, old->thing};
  whole.items.push_back(fresh);
  const auto leg_money = [&](const PhaseStep& step) {
    double sum = 0;
    for (const CostLine& line : step.cost.lines) sum += line.sum.value_or(0);
    return sum - step.kept;
  };
  const PhasePlan plan = told_of(whole);
  CHECK(plan.steps[1].kept > 0);
  CHECK(leg_money(plan.steps[1]) == Approx(0).margin(1e-6));
}

TEST_CASE("A yard of one phase has one column, and an empty yard is told") {
  const PhasePlan plan = told_of(Site{});
  REQUIRE(plan.steps.size() == 1);
  CHECK(plan.steps.front().built.empty());
  for (const ComparedRow& row : phase_rows(plan, shipped_catalogs())) CHECK(row.cells.size() == 1);
}
