#include "geom/grow/proposals.hpp"

#include <catch2/catch.hpp>

#include "geom/grow/compare.hpp"
#include "tests/geom/grow/growth_task.hpp"
#include "tests/scenes/demo_yards.hpp"
#include "tests/scenes/scene_builder.hpp"

using namespace yardwright;
using namespace yardwright::grow;
using namespace yardwright::scenes;

namespace {

constexpr double ft = 0.3048;

Site grown(const GrowthTask& task, const Proposal& proposal) {
  const Site whole = yardwright::apply(task.whole, proposal.edits);
  return as_of(whole, static_cast<int>(whole.phases.size()) - 1);
}

bool is_new(const GrowthTask& task, const Finding& finding) {
  return std::ranges::any_of(finding.items, [&](ItemId id) { return find(task.whole, id) == nullptr; });
}

/// By a check of its own that knows nothing of the search: all that is new passes, and what passed still does.
void check_passes(const GrowthTask& task, const Proposal& proposal) {
  const Findings before = all_findings(check(task.site, shipped_catalogs()));
  int about_new = 0;
  for (const Finding& finding : all_findings(check(grown(task, proposal), shipped_catalogs()))) {
    INFO(proposal.name << ": " << finding.id << ": " << finding.title);
    const bool wanting =
        finding.verdict == Verdict::fail || (finding.verdict == Verdict::caution && !task.brief.bears_advice);
    about_new += is_new(task, finding) ? 1 : 0;
    if (is_new(task, finding)) CHECK_FALSE(wanting);
    const auto was = std::ranges::find(before, finding.id, &Finding::id);
    if (was != before.end() && was->verdict == Verdict::pass) CHECK_FALSE(wanting);
    // What failed before fails by no more than a tenth more, of what it was short of or of what is asked.
    if (was != before.end() && was->verdict == Verdict::fail && finding.verdict == Verdict::fail)
      CHECK(finding.margin >= was->margin - 0.1001 * std::max(-was->margin, std::abs(was->required)));
  }
  CHECK(about_new >= 4 * static_cast<int>(proposal.layout.stands.size()));
}

/// By the sums of all that stands before and after, as a comparison of the two yards tells them; earth apart, and the spouts
/// that a raised leg hangs anew: what hung there is lost.
double cost_by_comparison(const GrowthTask& task, const Proposal& proposal) {
  const Site after = grown(task, proposal);
  const auto sum = [&](const Quantities& quantities, auto counts) {
    double money = 0;
    for (const CostLine& line : cost_of(quantities, task.book).lines)
      if (counts(line.line.work)) money += line.sum.value_or(0);
    return money;
  };
  const auto all = [](const Site& site) { return quantities(site, design_surface(site), shipped_catalogs()); };
  const auto is_built = [](Work work) { return !is_earth(work); };
  const QuantityChange change = quantity_change(task.site, after, shipped_catalogs());
  return sum(all(after), is_built) - sum(all(task.site), is_built) + sum(change.built, is_earth) +
         (proposal.measures.raised_m > 0 ? sum(change.gone, [](Work work) { return work == Work::spout; }) : 0);
}

Proposals proposed(const GrowthTask& task, int tries, std::uint64_t seed = 1) {
  return propose(task, {.search = {.seed = seed, .tries = tries}});
}

}  // namespace

TEST_CASE("Every proposal is built as it says and passes a check of the whole yard") {
  GrowthBrief borne = brief_for(50'000);
  borne.bears_advice = true;
  std::vector<std::unique_ptr<GrowthTask>> tasks;
  tasks.push_back(task_of(new_yard(), brief_for(100'000)));
  tasks.push_back(task_of(old_yard(), borne));
  tasks.push_back(task_of(old_yard(), brief_for(30'000)));
  for (const auto& task : tasks) {
    REQUIRE(faults_of(*task).empty());
    const Proposals found = proposed(*task, 160);
    INFO(task->site.name << ": " << found.why_none);
    REQUIRE(found.list.size() >= 2);
    for (const Proposal& one : found.list) {
      check_passes(*task, one);
      CHECK(one.measures.cost == Approx(cost_by_comparison(*task, one)).epsilon(1e-9));
      CHECK(one.meets == meets(one.measures, task->brief));
      CHECK(grown(*task, one).items.size() > task->site.items.size());
    }
  }
}

TEST_CASE("What stands is kept but for legs that are raised, and what is new is in a phase of its own") {
  const auto task = task_of(new_yard(), brief_for(100'000));
  for (const Proposal& one : proposed(*task, 96).list) {
    const Site after = yardwright::apply(task->whole, one.edits);
    CHECK(after.phases.size() == task->whole.phases.size() + 1);
    for (const Item& item : task->whole.items) {
      const Item* now = find(after, item.id);
      REQUIRE(now != nullptr);
      if (as<Leg>(item) == nullptr) CHECK(*now == item);
    }
    for (const Item& item : after.items)
      if (find(task->whole, item.id) == nullptr) CHECK(item.phase == static_cast<int>(task->whole.phases.size()));
  }
}

TEST_CASE("Proposals are unlike each other, and none is beaten") {
  const auto task = task_of(new_yard(), brief_for(120'000));
  const Proposals found = proposed(*task, 192);
  REQUIRE(found.list.size() > 2);
  std::vector<Aims> points;
  for (const Proposal& one : found.list) {
    points.push_back(aims_of(one.measures, task->brief));
    for (const Proposal& other : found.list)
      if (&one != &other) CHECK(apart_m(one.layout, other.layout) >= unlike_from_m);
  }
  CHECK(non_dominated(points).size() == points.size());
  for (std::size_t i = 1; i < found.list.size(); ++i)
    if (found.list[i].meets) CHECK(found.list[i].measures.cost >= found.list[i - 1].measures.cost);
}

TEST_CASE("What a budget does not pay for is not proposed, and what falls short is told as short") {
  GrowthBrief brief = brief_for(120'000);
  brief.budget = 200'000;
  const auto task = task_of(new_yard(), brief);
  const Proposals found = proposed(*task, 96);
  REQUIRE_FALSE(found.list.empty());
  for (const Proposal& one : found.list) {
    CHECK(one.measures.cost <= 200'000);
    CHECK_FALSE(one.meets);
  }
  CHECK(found.list.front().measures.stored_m3 >= found.list.back().measures.stored_m3);
}

TEST_CASE("A brief that nothing can meet is answered with a sentence") {
  const auto words = [](const Site& site, const GrowthBrief& brief) {
    const auto task = task_of(site, brief);
    REQUIRE(faults_of(*task).empty());
    const Proposals none = proposed(*task, 32);
    CHECK(none.list.empty());
    return none.why_none;
  };
  GrowthBrief poor = brief_for(40'000);
  poor.budget = 1000;
  CHECK_THAT(words(new_yard(), poor), Catch::Contains("the budget of 1,000 USD pays for no bin"));
  GrowthBrief tight = brief_for(40'000);
  tight.budget = 50'000;  // the least bin, without pad and spout
  CHECK_THAT(words(new_yard(), tight), Catch::Contains("costs more than the budget of 50,000 USD"));
  GrowthBrief huge = brief_for(40'000);
  huge.bins = {{50, 30}};
  CHECK_THAT(words(new_yard(), huge), Catch::Contains("no bin of these sizes fits"));
  std::stop_source stop;
  stop.request_stop();
  const auto task = task_of(new_yard(), brief_for(40'000));
  CHECK_THAT(propose(*task, {.search = {.stop = stop.get_token()}}).why_none, Catch::Contains("stopped before"));
}

TEST_CASE("What keeps a brief from being sought by is told, all of it") {
  const auto told = [](const Site& site, const GrowthBrief& brief) {
    std::string all;
    for (const Problem& problem : faults_of(*task_of(site, brief))) all += sentence(problem) + "\n";
    return all;
  };
  CHECK_THAT(told(new_yard(), GrowthBrief{}),
             Catch::Contains("no more storage is wanted") && Catch::Contains("no size of bin is given"));
  Site no_lot = new_yard();
  no_lot.lot = {};
  CHECK_THAT(told(no_lot, brief_for(40'000)), Catch::Contains("the lot is not drawn"));
  GrowthBrief odd = brief_for(40'000);
  odd.grain = "gravel";
  CHECK_THAT(told(new_yard(), odd), Catch::Contains("the grain \"gravel\" is not known"));
  GrowthBrief low = brief_for(40'000);
  low.discharge_m = {20};
  CHECK_THAT(told(new_yard(), low), Catch::Contains("no leg is as low as"));
}

TEST_CASE("A yard without levels is proposed for too, and says what was not checked; one without a leg is not") {
  Site site;
  site.lot = rectangular_lot(100, 80, LotEdge::own_field);
  const auto bare = task_of(site, brief_for(60'000));
  CHECK_THAT(sentence(faults_of(*bare).front()), Catch::Contains("no leg"));
  SceneBuilder yard{site};
  yard.add("Leg", Leg{.at = {50, 40}, .discharge_height_m = 40});
  GrowthBrief brief = brief_for(60'000);
  const auto task = task_of(yard.site(), brief);
  const Proposals found = proposed(*task, 64);
  REQUIRE_FALSE(found.list.empty());
  for (const Proposal& one : found.list) {
    CHECK(one.meets);
    CHECK(std::ranges::count(one.not_checked, Question::drain, &Finding::question) >
          0);  // nobody knows the water's way
  }
}

TEST_CASE("How far two layouts are apart") {
  const Layout a{{30}, {{0, {0, 0}}, {1, {20, 0}}}}, swapped{{30}, {{1, {20, 0}}, {0, {0, 0}}}};
  CHECK(apart_m(a, a) == 0);
  CHECK(apart_m(a, swapped) == 0);
  CHECK(apart_m(a, {{30}, {{0, {0, 4}}, {1, {20, 3}}}}) == 4);
  CHECK(std::isinf(apart_m(a, {{33}, a.stands})));
  CHECK(std::isinf(apart_m(a, {{30}, {{0, {0, 0}}, {0, {20, 0}}}})));
  CHECK(std::isinf(apart_m(a, {{30}, {{0, {0, 0}}}})));
}
