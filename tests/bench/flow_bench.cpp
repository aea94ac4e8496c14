// The flow of water over 160,000 cells of rough ground: all of it, and after a square block of so many cells a side was
// raised or lowered by a foot. Beside the times, what share of the cells was looked at to fill them.
#include <benchmark/benchmark.h>

#include "geom/drain/flow_after.hpp"
#include "tests/geom/drain/terrain.hpp"

using namespace yardwright;
using namespace yardwright::drain;

namespace {

constexpr int side = 400;

LevelGrid with_block(const LevelGrid& ground, int block) {
  std::vector<float> levels_m = ground.values();
  const int from = (side - block) / 2;
  for (int row = from; row < from + block; ++row) {
    for (int column = from; column < from + block; ++column) levels_m[ground.frame().offset({column, row})] += 0.3F;
  }
  return {ground.frame(), std::move(levels_m)};
}

void flow_of_all(benchmark::State& state) {
  const LevelGrid ground = rough_ground(side, side, 1);
  for (auto _ : state) benchmark::DoNotOptimize(flow_over(ground));
}

void flow_after_a_block(benchmark::State& state) {
  const LevelGrid low = rough_ground(side, side, 1), high = with_block(low, static_cast<int>(state.range(0)));
  Flow flow = flow_over(low);
  bool raised = false;
  double filled = 0;
  for (auto _ : state) {
    flow = flow_after(flow, raised ? low : high);
    raised = !raised;
    filled += flow.work.filled;
  }
  state.counters["share"] = benchmark::Counter(filled / (side * side), benchmark::Counter::kAvgIterations);
}

BENCHMARK(flow_of_all)->Unit(benchmark::kMillisecond);
BENCHMARK(flow_after_a_block)
    ->Arg(0)
    ->Arg(1)
    ->Arg(8)
    ->Arg(32)
    ->Arg(48)
    ->Arg(64)
    ->Arg(100)
    ->Arg(300)
    ->Unit(benchmark::kMillisecond);

}  // namespace
