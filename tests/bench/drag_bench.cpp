// A drag step on the yard that the budget is stated for: one bin moved by a hand's breadth, every live answer asked
// again. Times are for reading, never for a test's verdict; beside them the share of the cells that were looked at to fill
// them.
#include <benchmark/benchmark.h>

#include "geom/check/keep_memory.hpp"
#include "geom/check/live_check.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/site/footprint.hpp"
#include "tests/scenes/demo_yards.hpp"

using namespace yardwright;

namespace {

/// Moves one item to and fro and asks after each move.
void drag(benchmark::State& state, const Site& start, std::string_view kind, SiteVector step = {0.1, 0}) {
  Site site = start;
  LiveCheck live{shipped_catalogs()};
  live.ask(site);
  Item* dragged = nullptr;
  for (Item& item : site.items) {
    if (kind_key(item.thing) == kind) dragged = &item;
  }
  double filled = 0;
  for (auto _ : state) {
    dragged->thing = moved(dragged->thing, step);
    step = step * -1;
    live.ask(site);
    filled += live.answers().drain->flow.work.filled;
  }
  const double cells = static_cast<double>(site.ground.levels.frame().cells());
  state.counters["cells"] = cells;
  state.counters["share"] = benchmark::Counter(filled / cells, benchmark::Counter::kAvgIterations);
}

void bin_on_sixty_items(benchmark::State& state) { drag(state, scenes::drag_yard(), "bin"); }
void berm_on_sixty_items(benchmark::State& state) { drag(state, scenes::drag_yard(), "berm"); }
void berm_across_on_sixty_items(benchmark::State& state) { drag(state, scenes::drag_yard(), "berm", {0, 0.5}); }
void swale_across_on_sixty_items(benchmark::State& state) { drag(state, scenes::drag_yard(), "swale", {0, 0.5}); }
void pad_on_sixty_items(benchmark::State& state) { drag(state, scenes::drag_yard(), "pad", {0.5, 0.5}); }
void graded_drive_on_sixty_items(benchmark::State& state) {
  Site site = scenes::drag_yard();
  for (Item& item : site.items) {
    if (Drive* drive = std::get_if<Drive>(&item.thing)) drive->greatest_grade_ratio = 0.02;
  }
  drag(state, site, "drive");
}
void bin_on_the_old_yard(benchmark::State& state) { drag(state, scenes::old_yard(), "bin"); }

BENCHMARK(bin_on_sixty_items)->Unit(benchmark::kMillisecond);
BENCHMARK(berm_on_sixty_items)->Unit(benchmark::kMillisecond);
BENCHMARK(berm_across_on_sixty_items)->Unit(benchmark::kMillisecond);
BENCHMARK(swale_across_on_sixty_items)->Unit(benchmark::kMillisecond);
BENCHMARK(pad_on_sixty_items)->Unit(benchmark::kMillisecond);
BENCHMARK(graded_drive_on_sixty_items)->Unit(benchmark::kMillisecond);
BENCHMARK(bin_on_the_old_yard)->Unit(benchmark::kMillisecond);

}  // namespace

/// As the window does.
int main(int count, char** words) {
  keep_freed_memory();
  benchmark::Initialize(&count, words);
  if (benchmark::ReportUnrecognizedArguments(count, words)) return 1;
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
