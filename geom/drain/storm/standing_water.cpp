#include "geom/drain/storm/standing_water.hpp"

#include <algorithm>
#include <cmath>

#include "geom/drain/hollows.hpp"
#include "geom/drain/pit_water.hpp"

namespace yardwright::drain::storm {

namespace {

std::size_t at(Cell cell) { return static_cast<std::size_t>(cell); }

/// Mean over the cells; the last kind is that of roofs, which shed beside themselves.
double mean_run_off_m(const StormGround& ground, std::span<const double> run_off_m, std::span<const Cell> cells) {
  double sum_m = 0;
  for (const Cell cell : cells) {
    sum_m += run_off_m[ground.kind[at(cell)]];
  }
  return cells.empty() ? 0 : sum_m / static_cast<double>(cells.size());
}

/// The cells of a hollow that lie under one level of water with a cell, itself among them.
class Pool {
 public:
  Pool(const Flow& flow, std::vector<float>& depth_m, Cell of) : flow_{flow}, depth_m_{depth_m} {
    const double level_m = level_of(of);
    const std::int32_t number = flow.depression[at(of)];
    for (std::size_t i = 0; i < depth_m.size(); ++i) {
      const auto cell = static_cast<Cell>(i);
      const bool wet = depth_m[i] > 0 && flow.depression[i] == number;
      if (wet && std::abs(level_of(cell) - level_m) < 1e-4) cells_.push_back(cell);
    }
  }

  double over_m3(double level_m) const {
    double sum_m = 0;
    for (const Cell cell : cells_)
      sum_m += std::clamp(level_of(cell) - level_m, 0.0, static_cast<double>(depth_m_[at(cell)]));
    return sum_m * flow_.frame.cell_area_m2();
  }

  /// Takes a volume of the water over a level away.
  void lower(double volume_m3, double least_m, double now_m) {
    double low_m = least_m, high_m = now_m;
    for (int i = 0; i < 50; ++i) {
      const double middle_m = (low_m + high_m) / 2;
      (over_m3(middle_m) > volume_m3 ? low_m : high_m) = middle_m;
    }
    for (const Cell cell : cells_) {
      const double ground_m = static_cast<double>(flow_.level_m[at(cell)]);
      depth_m_[at(cell)] = static_cast<float>(std::max(0.0, std::min(level_of(cell), high_m) - ground_m));
    }
  }

  double level_of(Cell cell) const {
    return static_cast<double>(flow_.level_m[at(cell)]) + static_cast<double>(depth_m_[at(cell)]);
  }

 private:
  const Flow& flow_;
  std::vector<float>& depth_m_;
  std::vector<Cell> cells_;
};

/// The stretch of a rim over which water stands highest.
Cell highest_at_rim(const Flow& flow, const std::vector<float>& depth_m, const PitMouth& mouth, double rim_m) {
  Cell highest = outside;
  double highest_m = rim_m;
  for (const RimStretch& stretch : mouth.rim) {
    const std::size_t i = at(stretch.cell);
    const double level_m = static_cast<double>(flow.level_m[i]) + static_cast<double>(depth_m[i]);
    if (depth_m[i] <= 0 || level_m <= highest_m) continue;
    highest = stretch.cell;
    highest_m = level_m;
  }
  return highest;
}

void let_into_pits(StandingWater& water, const Flow& flow, const StormGround& ground) {
  for (std::size_t i = 0; i < ground.tanks.size(); ++i) {
    const PitTank& tank = ground.tanks[i];
    const Cell rim = highest_at_rim(flow, water.depth_m, ground.mouths[i], tank.rim_m);
    if (rim == outside) continue;
    Pool pool{flow, water.depth_m, rim};
    const double over_m3 = pool.over_m3(tank.rim_m);
    const bool pumped = tank.pump.works && tank.pump.rate_m3_per_s > 0;
    const double taken_m3 = pumped ? over_m3 : std::min(over_m3, tank.holds_m3());
    pool.lower(taken_m3, tank.rim_m, pool.level_of(rim));
    if (!pumped) water.in_pits_m3[i] = taken_m3;
  }
}

}  // namespace

StandingWater standing_water(const Flow& flow, const StormGround& ground, std::span<const double> run_off_m) {
  StandingWater water{std::vector<float>(flow.level_m.size(), 0.0F), std::vector<double>(ground.tanks.size(), 0.0)};
  const auto cells = cells_by_depression(flow);
  for (std::size_t number = 0; number < flow.depressions.size(); ++number) {
    if (!worth_showing(flow.depressions[number])) continue;
    const std::vector<Cell> above = catchment(flow, cells[number]);
    const double mean_m = mean_run_off_m(ground, run_off_m, above);
    if (mean_m <= 0) continue;
    Hollows hollows{flow, static_cast<std::int32_t>(number)};
    hollows.rain_on(above, mean_m);
    for (const Cell cell : cells[number]) {
      if (ground.kind[at(cell)] + std::size_t{1} >= run_off_m.size()) continue;
      const double depth_m = hollows.level_m(cell) - static_cast<double>(flow.level_m[at(cell)]);
      water.depth_m[at(cell)] = static_cast<float>(std::max(0.0, depth_m));
    }
  }
  let_into_pits(water, flow, ground);
  return water;
}

}  // namespace yardwright::drain::storm
