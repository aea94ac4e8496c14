// How far the search for proposals has come after so many tries and so long, beside thrown layouts tried for as many times
// and as long: prints the table of docs/methods/grow.md. The middle of several seeds; times are this machine's.
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <string_view>

#include "tests/geom/grow/growth_task.hpp"
#include "tests/scenes/demo_yards.hpp"

using namespace yardwright;
using namespace yardwright::grow;

namespace {

constexpr int seeds = 3;
const std::vector marks{50, 100, 200, 400, 800};

struct Brief {
  std::string_view name;
  Site site;
  double wanted_bu;
  bool bears_advice;
  double money;
  int most_thrown;  ///< bins of a thrown layout: as many as are needed, and a little more
};

struct Seen {
  double seconds = 0, share = 0, cost = 0;  ///< cost of the cheapest with all that is wanted; 0 where there is none
};

double seconds_since(std::chrono::steady_clock::time_point begun) {
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begun).count();
}

double cheapest(const std::vector<LayoutTrial>& kept, const GrowthBrief& brief) {
  double cost = 0;
  for (const LayoutTrial& one : kept) {
    if (meets(one.measures, brief) && (cost == 0 || one.measures.cost < cost)) cost = one.measures.cost;
  }
  return cost;
}

Seen searched(const GrowthTask& task, int tries, std::uint64_t seed, double money) {
  const auto begun = std::chrono::steady_clock::now();
  const SearchResult found = search_layouts(task, {.seed = seed, .tries = tries});
  return {seconds_since(begun), front_share(found.kept, task.brief, money), cheapest(found.kept, task.brief)};
}

Seen thrown(const GrowthTask& task, int tries, std::uint64_t seed, const Brief& brief) {
  const auto begun = std::chrono::steady_clock::now();
  const LayoutDrafts drafts{task};
  const LayoutTrials trials{task};
  KeptLayouts kept{task.brief};
  Dice dice{seed};
  for (int i = 0; i < tries; ++i) kept.offer(trials.tried(thrown_layout(task, drafts, brief.most_thrown, dice)));
  return {seconds_since(begun), front_share(kept.all(), task.brief, brief.money), cheapest(kept.all(), task.brief)};
}

double middle(std::vector<double> values) {
  std::ranges::sort(values);
  return values[values.size() / 2];
}

std::string cells(const std::vector<Seen>& seen) {
  std::vector<double> seconds, shares, costs;
  for (const Seen& one : seen) {
    seconds.push_back(one.seconds);
    shares.push_back(one.share);
    if (one.cost > 0) costs.push_back(one.cost / 1000);
  }
  const std::string cost = costs.empty() ? "none" : fmt::format("{:.0f}", middle(costs));
  return fmt::format("{:.1f} s | {:.3f} | {} of {} | {}", middle(seconds), middle(shares), costs.size(), seen.size(),
                     cost);
}

void tell(const Brief& brief) {
  GrowthBrief wanted = brief_for(brief.wanted_bu);
  wanted.bears_advice = brief.bears_advice;
  const auto task = task_of(brief.site, wanted);
  for (const int tries : marks) {
    std::vector<Seen> search, chance;
    for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
      search.push_back(searched(*task, tries, seed, brief.money));
      chance.push_back(thrown(*task, tries, seed, brief));
    }
    fmt::print("| {} | {} | {} | {} |\n", brief.name, tries, cells(search), cells(chance));
    std::fflush(stdout);
  }
}

}  // namespace

int main() {
  fmt::print(
      "| brief | tries | search takes | share | meet it | thousand USD | thrown takes | share | meet it | thousand USD "
      "|\n"
      "|---|---|---|---|---|---|---|---|---|---|\n");
  tell({"new yard, 120,000 bu", scenes::new_yard(), 120'000, false, 600'000, 4});
  tell({"new yard, 250,000 bu", scenes::new_yard(), 250'000, false, 1'200'000, 7});
  tell({"old yard, 150,000 bu, cautions borne", scenes::old_yard(), 150'000, true, 800'000, 5});
}
