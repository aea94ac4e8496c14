// A drag step on the yard that the budget is stated for: one bin moved by a hand's breadth, every live answer asked
// again. Times are for reading, never for a test's verdict.
#include <benchmark/benchmark.h>

#include "geom/check/live_check.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/site/footprint.hpp"
#include "tests/scenes/demo_yards.hpp"

using namespace yardwright;

namespace {

/// Moves one item to and fro and asks after each move.
void drag(benchmark::State& state, const Site& start, std::string_view kind) {
  Site site = start;
  LiveCheck live{shipped_catalogs()};
  live.ask(site);
  Item* dragged = nullptr;
  for (Item& item : site.items) {
    if (kind_key(item.thing) == kind) dragged = &item;
  }
  double step_m = 0.1;
  for (auto _ : state) {
    dragged->thing = moved(dragged->thing, {step_m, 0});
    step_m = -step_m;
    live.ask(site);
    benchmark::DoNotOptimize(live.answers());
  }
}

void bin_on_sixty_items(benchmark::State& state) { drag(state, scenes::drag_yard(), "bin"); }
void berm_on_sixty_items(benchmark::State& state) { drag(state, scenes::drag_yard(), "berm"); }
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
BENCHMARK(graded_drive_on_sixty_items)->Unit(benchmark::kMillisecond);
BENCHMARK(bin_on_the_old_yard)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
