#include "geom/grow/layout_search.hpp"

#include <tbb/global_control.h>

#include <catch2/catch.hpp>

#include "tests/geom/grow/growth_task.hpp"
#include "tests/scenes/demo_yards.hpp"

using namespace yardwright;
using namespace yardwright::grow;
using namespace yardwright::scenes;

namespace {

constexpr int tries = 160;
constexpr double money = 600'000;

KeptLayouts thrown_search(const GrowthTask& task, int count, std::uint64_t seed) {
  const LayoutDrafts drafts{task};
  const LayoutTrials trials{task};
  KeptLayouts kept{task.brief};
  Dice dice{seed};
  for (int i = 0; i < count; ++i) kept.offer(trials.tried(thrown_layout(task, drafts, 6, dice)));
  return kept;
}

double most_for(const std::vector<LayoutTrial>& kept, double cost) {
  double most = 0;
  for (const LayoutTrial& one : kept) {
    if (one.measures.cost <= cost) most = std::max(most, one.measures.stored_m3);
  }
  return most;
}

std::vector<Layout> layouts_of(const SearchResult& found) {
  std::vector<Layout> all;
  for (const LayoutTrial& one : found.kept) all.push_back(one.layout);
  return all;
}

SearchResult found_with(const GrowthTask& task, std::size_t threads, std::uint64_t seed) {
  const tbb::global_control limit{tbb::global_control::max_allowed_parallelism, threads};
  return search_layouts(task, {.seed = seed, .tries = 96});
}

}  // namespace

TEST_CASE("At as many tries the search meets a brief that thrown layouts never do, and fills more of the front") {
  const auto task = task_of(new_yard(), brief_for(250'000));
  constexpr double much_money = 1'200'000, some_money = 900'000;
  for (const std::uint64_t seed : {1u, 2u}) {
    INFO("seed " << seed);
    const SearchResult found = search_layouts(*task, {.seed = seed, .tries = tries});
    const KeptLayouts thrown = thrown_search(*task, tries, seed);
    const auto meeting = [&](const LayoutTrial& one) { return meets(one.measures, task->brief); };
    CHECK(found.progress.tried == tries);
    CHECK(std::ranges::any_of(found.kept, meeting));
    CHECK(std::ranges::none_of(thrown.all(), meeting));
    CHECK(front_share(found.kept, task->brief, much_money) > 1.1 * front_share(thrown.all(), task->brief, much_money));
    CHECK(most_for(found.kept, some_money) > 1.4 * most_for(thrown.all(), some_money));
  }
}

TEST_CASE("The same seed and as many tries keep the same layouts on one thread and on several") {
  const auto task = task_of(new_yard(), brief_for(100'000));
  const SearchResult one = found_with(*task, 1, 5), two = found_with(*task, 2, 5), four = found_with(*task, 4, 5);
  REQUIRE(one.kept.size() > 3);
  CHECK(layouts_of(one) == layouts_of(two));
  CHECK(layouts_of(one) == layouts_of(four));
  for (std::size_t i = 0; i < one.kept.size(); ++i) CHECK(one.kept[i].measures == two.kept[i].measures);
  CHECK(layouts_of(one) != layouts_of(found_with(*task, 2, 6)));
}

TEST_CASE("More tries of the same seed never fill less of the front") {
  const auto task = task_of(new_yard(), brief_for(60'000));
  double share = 0;
  std::vector<LayoutTrial> kept;
  for (const int count : {32, 64, 128}) {
    // Half of the tries are plain at most, so a longer search begins as a shorter one only from there on.
    const double now = front_share(search_layouts(*task, {.seed = 3, .tries = count}).kept, task->brief, money);
    CHECK(now >= share - 0.01);
    share = now;
  }
  CHECK(share > 0.3);
}

TEST_CASE("No layout that is kept beats another, and every one was tried and holds") {
  GrowthBrief brief = brief_for(50'000);
  brief.bears_advice = true;
  const auto task = task_of(old_yard(), brief);
  const SearchResult found = search_layouts(*task, {.seed = 2, .tries = 128});
  REQUIRE(found.kept.size() > 3);
  std::vector<Aims> points;
  for (const LayoutTrial& one : found.kept) {
    CHECK(one.holds());
    points.push_back(aims_of(one.measures, task->brief));
  }
  CHECK(non_dominated(points).size() == points.size());
}

TEST_CASE("A stop ends the search between two tries, and what was found so far holds") {
  const auto task = task_of(new_yard(), brief_for(60'000));
  std::stop_source stop;
  SearchEffort effort{.tries = 100'000, .stop = stop.get_token()};
  effort.told = [&](const SearchProgress& progress) {
    if (progress.tried >= 48) stop.request_stop();
  };
  const SearchResult found = search_layouts(*task, effort);
  CHECK(found.progress.tried < 100);
  CHECK_FALSE(found.kept.empty());
  for (const LayoutTrial& one : found.kept) CHECK(one.holds());
  // Before its first round it has nothing, and says so.
  std::stop_source at_once;
  at_once.request_stop();
  CHECK(search_layouts(*task, {.stop = at_once.get_token()}).kept.empty());
}
