// Cell-steps a second of the storm's surface flow, beside the same scheme written out plainly: double numbers, std::pow,
// one cell after another. Items are cell-steps. Beside them the speed of the memory: a step reads and writes its arrays in
// three passes, 88 bytes a cell, and no more cell-steps than that can come from memory. And a whole storm of two hours, as
// the command runs it, over a yard of 400 x 400 cells of a metre.
#include <benchmark/benchmark.h>
#include <tbb/global_control.h>

#include <algorithm>
#include <cmath>

#include "geom/drain/storm/storm.hpp"
#include "geom/drain/storm/surface_flow.hpp"
#include "geom/io/catalogs.hpp"
#include "tests/scenes/demo_yards.hpp"
#include "tests/scenes/scene_builder.hpp"

using namespace yardwright;
using namespace yardwright::drain::storm;

namespace {

constexpr double step_s = 0.2, film_m = 0.02, roughness_n = 0.03;

LevelGrid rolling_ground(int side) {
  const GridFrame frame{{0, 0}, 1, side, side};
  std::vector<float> levels_m;
  for (int row = 0; row < side; ++row) {
    for (int column = 0; column < side; ++column)
      levels_m.push_back(static_cast<float>(10 - 0.01 * column + 0.2 * std::sin(row / 9.0) * std::cos(column / 11.0)));
  }
  return {frame, std::move(levels_m)};
}

void surface_flow(benchmark::State& state) {
  const auto side = static_cast<int>(state.range(0));
  const tbb::global_control threads{tbb::global_control::max_allowed_parallelism,
                                    static_cast<std::size_t>(state.range(1))};
  const LevelGrid ground = rolling_ground(side);
  SurfaceFlow flow{ground, std::vector<float>(ground.frame().cells(), static_cast<float>(roughness_n))};
  const std::vector<std::uint8_t> kind(ground.frame().cells(), 0);
  flow.rain(kind, {&film_m, 1});
  for (auto _ : state) flow.step(std::min(step_s, flow.stable_step_s(step_s)));
  state.SetItemsProcessed(state.iterations() * side * side);
}

/// The scheme as a textbook has it, on the same ground: the same three changes, no threads, no vectors.
class PlainFlow {
 public:
  explicit PlainFlow(const LevelGrid& ground)
      : side_{ground.frame().columns},
        z_(ground.values().begin(), ground.values().end()),
        h_(z_.size(), film_m),
        east_(z_.size(), 0.0),
        north_(z_.size(), 0.0),
        share_(z_.size(), 1.0) {}

  void step() {
    const std::vector<double> east = east_, north = north_;
    for (int row = 0; row < side_; ++row) {
      for (int column = 0; column < side_; ++column) {
        const std::size_t i = at(column, row);
        east_[i] = column + 1 < side_ ? face(i, i + 1, mean(east, i, 1, column, side_ - 1)) : 0;
        north_[i] =
            row + 1 < side_ ? face(i, i + static_cast<std::size_t>(side_), mean(north, i, side_, row, side_ - 1)) : 0;
      }
    }
    limit();
    for (int row = 0; row < side_; ++row) {
      for (int column = 0; column < side_; ++column) {
        const std::size_t i = at(column, row);
        const double west = column > 0 ? east_[i - 1] : 0,
                     south = row > 0 ? north_[i - static_cast<std::size_t>(side_)] : 0;
        h_[i] = std::max(0.0, h_[i] + step_s * (west - east_[i] + south - north_[i]));
      }
    }
  }
  double deepest_m() const { return *std::max_element(h_.begin(), h_.end()); }

 private:
  std::size_t at(int column, int row) const { return static_cast<std::size_t>(row * side_ + column); }

  static double mean(const std::vector<double>& q, std::size_t i, int stride, int place, int last) {
    const auto beside = static_cast<std::size_t>(stride);
    const double before = place > 0 ? q[i - beside] : q[i], after = place < last ? q[i + beside] : q[i];
    return 0.8 * q[i] + 0.1 * (before + after);
  }

  double face(std::size_t low, std::size_t high, double q) const {
    const double low_level = z_[low] + h_[low], high_level = z_[high] + h_[high], fall = low_level - high_level;
    const double open = std::max(low_level, high_level) - std::max(z_[low], z_[high]);
    const double driven = q + 9.81 * step_s * open * fall;
    const double h = std::min(open, driven > 0 ? h_[low] : h_[high]);
    if (h <= 1e-5) return 0;
    const double b = q + 9.81 * step_s * h * fall;
    const double k = 9.81 * step_s * roughness_n * roughness_n / std::pow(h, 7.0 / 3.0);
    return 2 * b / (1 + std::sqrt(1 + 4 * k * std::abs(b)));
  }

  void limit() {
    for (int row = 0; row < side_; ++row) {
      for (int column = 0; column < side_; ++column) {
        const std::size_t i = at(column, row);
        const double west = column > 0 ? east_[i - 1] : 0,
                     south = row > 0 ? north_[i - static_cast<std::size_t>(side_)] : 0;
        const double out = step_s * (std::max(east_[i], 0.0) + std::max(-west, 0.0) + std::max(north_[i], 0.0) +
                                     std::max(-south, 0.0));
        share_[i] = out > h_[i] ? h_[i] / out : 1;
      }
    }
    for (std::size_t i = 0; i < z_.size(); ++i) {
      const std::size_t right = std::min(i + 1, z_.size() - 1);
      const std::size_t up = std::min(i + static_cast<std::size_t>(side_), z_.size() - 1);
      east_[i] *= east_[i] > 0 ? share_[i] : share_[right];
      north_[i] *= north_[i] > 0 ? share_[i] : share_[up];
    }
  }

  int side_;
  std::vector<double> z_, h_, east_, north_, share_;
};

void plain_flow(benchmark::State& state) {
  const auto side = static_cast<int>(state.range(0));
  PlainFlow flow{rolling_ground(side)};
  for (auto _ : state) flow.step();
  benchmark::DoNotOptimize(flow.deepest_m());
  state.SetItemsProcessed(state.iterations() * side * side);
}

/// Bytes a second of c = a + 3 b over arrays far larger than the caches, one thread.
void memory_speed(benchmark::State& state) {
  constexpr std::size_t length = std::size_t{1} << 25;
  std::vector<float> a(length, 1.0F), b(length, 2.0F), c(length, 0.0F);
  for (auto _ : state) {
    for (std::size_t i = 0; i < length; ++i) c[i] = a[i] + 3 * b[i];
    benchmark::DoNotOptimize(c.data());
    benchmark::ClobberMemory();
  }
  state.SetBytesProcessed(state.iterations() * static_cast<std::int64_t>(3 * sizeof(float) * length));
}

/// The yard of the drag budget with sumps, a pump and culverts under its drive: 60 items and more on rolling ground.
Site storm_yard() {
  scenes::SceneBuilder yard{scenes::drag_yard()};
  constexpr double pump_m3_per_s = 0.01;
  yard.add("", Pit{.at = {160, 215}, .body = {.pump_m3_per_s = pump_m3_per_s}});
  yard.add("", Pit{.at = {250, 100}});
  yard.add("", Culvert{.path = {{100, 68}, {100, 52}}});
  yard.add("", Culvert{.path = {{300, 68}, {300, 52}}});
  return yard.site();
}

/// The heaviest two hours, nothing kept to play back. Items are cell-steps.
void two_hour_storm(benchmark::State& state) {
  const tbb::global_control threads{tbb::global_control::max_allowed_parallelism,
                                    static_cast<std::size_t>(state.range(0))};
  const Site site = storm_yard();
  const DesignSurface surface = design_surface(site);
  const StormOptions options{.length_s = 2 * 3600, .frame_every_s = 0};
  std::int64_t steps = 0;
  for (auto _ : state) {
    const auto story = run_storm(site, surface, shipped_catalogs(), options);
    if (!story || story->balance.error_ratio() > 1e-9) return state.SkipWithError("the storm was not run");
    steps += story->steps;
  }
  state.counters["steps"] = benchmark::Counter(static_cast<double>(steps), benchmark::Counter::kAvgIterations);
  state.SetItemsProcessed(steps * static_cast<std::int64_t>(surface.design.frame().cells()));
}

}  // namespace

BENCHMARK(two_hour_storm)->Arg(1)->Arg(2)->Iterations(1)->Unit(benchmark::kSecond)->UseRealTime();
BENCHMARK(memory_speed)->Unit(benchmark::kMillisecond);
BENCHMARK(plain_flow)->Arg(400)->Arg(1000)->Unit(benchmark::kMillisecond);
BENCHMARK(surface_flow)
    ->Args({400, 1})
    ->Args({400, 2})
    ->Args({1000, 1})
    ->Args({1000, 2})
    ->Unit(benchmark::kMillisecond)
    ->UseRealTime();
