#include "geom/drain/storm/storm_run.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "geom/drain/openings.hpp"

namespace yardwright::drain::storm {

namespace {

constexpr double rain_every_s = 2;
/// Of a cell's water over a sill, that may leave in one step: more would make it swing.
constexpr double most_in_a_step = 0.5;

}  // namespace

StormRun::StormRun(const StormGround& ground, const Rainfall& rain, const StormOptions& options, double start_s)
    : ground_{ground},
      rain_{rain},
      flow_{ground.bed, ground.roughness_n},
      pits_{ground.tanks, ground.tunnels},
      open_ratio_{options.mishap == Mishap::inlets_half_blocked ? 0.5 : 1.0},
      tile_open_ratio_{options.mishap == Mishap::tiles_full ? 0.0 : 1.0},
      now_s_{start_s},
      rained_until_s_{start_s},
      pit_rain_m3_(ground.tanks.size(), 0.0),
      pit_in_m3_(ground.tanks.size(), 0.0),
      culvert_m3_(ground.culverts.size(), 0.0),
      tile_m3_(ground.tiles.lines.size(), 0.0),
      grate_m3_(ground.tiles.grates.size(), 0.0),
      pit_from_tiles_m3_(ground.tanks.size(), 0.0),
      roof_to_tile_m3_(ground.tiles.roofs.size(), 0.0),
      tile_full_(ground.tiles.lines.size(), 0),
      full_(ground.tanks.size(), 0),
      rated_(ground.culverts.size()),
      cells_of_kind_(ground.curve_numbers.size() + 1, 0.0) {
  for (const std::uint8_t kind : ground.kind) cells_of_kind_[kind] += 1;
}

void StormRun::stand(const StandingWater& water) {
  for (std::size_t i = 0; i < water.depth_m.size(); ++i) {
    const double depth_m = flow_.add(static_cast<Cell>(i), static_cast<double>(water.depth_m[i]));
    water_.stood_m3 += depth_m * flow_.frame().cell_area_m2();
  }
  for (std::size_t pit = 0; pit < water.in_pits_m3.size(); ++pit) {
    pits_.fill(pit, water.in_pits_m3[pit]);
    water_.stood_m3 += water.in_pits_m3[pit];
  }
}

void StormRun::rain_until(double until_s) {
  const auto gained = [&](double curve_number) {
    return rain_.run_off_m(until_s, curve_number) - rain_.run_off_m(rained_until_s_, curve_number);
  };
  const double cell_m2 = flow_.frame().cell_area_m2();
  const double fallen_m = rain_.fallen_m(until_s) - rain_.fallen_m(rained_until_s_);
  std::vector<double> run_off_m;
  for (const double curve_number : ground_.curve_numbers) run_off_m.push_back(gained(curve_number));
  run_off_m.push_back(0);  // where no rain comes to the ground
  flow_.rain(ground_.kind, run_off_m);
  for (std::size_t kind = 0; kind < ground_.curve_numbers.size(); ++kind) {
    water_.rain_m3 += fallen_m * cells_of_kind_[kind] * cell_m2;
    water_.soaked_m3 += (fallen_m - run_off_m[kind]) * cells_of_kind_[kind] * cell_m2;
  }
  const double from_roof_m = gained(ground_.roof_curve_number);
  for (const Roof& roof : ground_.roofs) {
    water_.rain_m3 += fallen_m * roof.area_m2;
    water_.soaked_m3 += (fallen_m - from_roof_m) * roof.area_m2;
    const double depth_m = from_roof_m * roof.area_m2 / (static_cast<double>(roof.drip.size()) * cell_m2);
    for (const Cell cell : roof.drip) flow_.add(cell, depth_m);
  }
  for (std::size_t i = 0; i < ground_.tiles.roofs.size(); ++i) {
    const double roof_m2 = ground_.tiles.roofs[i].area_m2;
    water_.rain_m3 += fallen_m * roof_m2;
    water_.soaked_m3 += (fallen_m - from_roof_m) * roof_m2;
    roof_to_tile_m3_[i] += from_roof_m * roof_m2;
  }
  for (std::size_t pit = 0; pit < ground_.mouths.size(); ++pit) {
    pit_rain_m3_[pit] += fallen_m * ground_.mouths[pit].sky_m2;
    water_.rain_m3 += fallen_m * ground_.mouths[pit].sky_m2;
  }
  rained_until_s_ = until_s;
}

/// Worked out again once a level has moved by half a millimetre.
double StormRun::rated_m3_per_s(std::size_t culvert) {
  constexpr double moved_m = 0.0005;
  const CulvertPipe& pipe = ground_.culverts[culvert];
  RatedCulvert& rated = rated_[culvert];
  const double start_m = flow_.level_m(pipe.start);
  const double end_m = std::max(flow_.level_m(pipe.end), pipe.tailwater_level_m);
  if (std::abs(start_m - rated.start_level_m) > moved_m || std::abs(end_m - rated.end_level_m) > moved_m)
    rated = {start_m, end_m, culvert_m3_per_s(pipe.barrel, start_m, end_m)};
  return rated.flow_m3_per_s;
}

void StormRun::run_culverts(double step_s) {
  const double cell_m2 = flow_.frame().cell_area_m2();
  for (std::size_t i = 0; i < ground_.culverts.size(); ++i) {
    const CulvertPipe& pipe = ground_.culverts[i];
    if (flow_.depth_m(pipe.start) <= 0) continue;
    const double wanted_m3 = open_ratio_ * rated_m3_per_s(i) * step_s;
    const double moved_m = std::min(wanted_m3 / cell_m2, flow_.depth_m(pipe.start) * most_in_a_step);
    flow_.add(pipe.start, -moved_m);
    flow_.add(pipe.end, moved_m);
    culvert_m3_[i] += moved_m * cell_m2;
  }
}

double StormRun::grate_stands_m(const TileGrate& grate) const {
  double stands_m = 0;
  for (const Cell cell : grate.cells) stands_m += flow_.depth_m(cell);
  return stands_m;
}

/// Its water spread over its cells; no more than a share of what stands there.
double StormRun::grate_wants_m3(const TileGrate& grate, double step_s) const {
  if (grate.cells.empty()) return 0;
  const double stands_m = grate_stands_m(grate), depth_m = stands_m / static_cast<double>(grate.cells.size());
  return std::min(open_ratio_ * grate_m3_per_s(grate.grate, depth_m) * step_s,
                  stands_m * flow_.frame().cell_area_m2() * most_in_a_step);
}

std::vector<TileLevels> StormRun::tile_levels() const {
  std::vector<TileLevels> levels;
  for (std::size_t i = 0; i < ground_.tiles.lines.size(); ++i) {
    const TileRun& run = ground_.tiles.lines[i];
    const TileOutlet& outlet = ground_.tiles.outlets[i];
    TileLevels at{run.pipe.start_crown_m(), run.tailwater_level_m};
    if (outlet.cell != outside) at.outlet_m = std::max(at.outlet_m, flow_.level_m(outlet.cell));
    if (outlet.pit) at.outlet_m = std::max(at.outlet_m, pits_.level_m(*outlet.pit));
    levels.push_back(at);
  }
  for (const TileGrate& grate : ground_.tiles.grates) {
    double& start_m = levels[grate.line].start_m;
    for (const Cell cell : grate.cells) {
      if (flow_.depth_m(cell) > 0) start_m = std::max(start_m, flow_.level_m(cell));
    }
  }
  return levels;
}

void StormRun::let_out(std::size_t line, double volume_m3) {
  tile_m3_[line] += volume_m3;
  if (ground_.tiles.lines[line].end == TileEnd::line) return;
  const TileOutlet& outlet = ground_.tiles.outlets[line];
  if (outlet.pit)
    pit_from_tiles_m3_[*outlet.pit] += volume_m3;
  else if (outlet.cell != outside)
    flow_.add(outlet.cell, volume_m3 / flow_.frame().cell_area_m2());
  else
    taken_away_m3_ += volume_m3;
}

void StormRun::take_from_grate(std::size_t grate, double volume_m3) {
  const double stands_m = grate_stands_m(ground_.tiles.grates[grate]), cell_m2 = flow_.frame().cell_area_m2();
  if (volume_m3 <= 0 || stands_m <= 0) return;
  for (const Cell cell : ground_.tiles.grates[grate].cells)
    flow_.add(cell, -volume_m3 / cell_m2 * flow_.depth_m(cell) / stands_m);
  grate_m3_[grate] += volume_m3;
}

/// What the line does not take comes out at the foot.
void StormRun::take_from_roof(std::size_t roof, double taken_share) {
  const double turned_away_m3 = roof_to_tile_m3_[roof] * (1 - taken_share);
  flow_.add(ground_.tiles.roofs[roof].foot, turned_away_m3 / flow_.frame().cell_area_m2());
  roof_to_tile_m3_[roof] = 0;
}

void StormRun::run_tiles(double step_s) {
  const Tiles& tiles = ground_.tiles;
  if (tiles.lines.empty()) return;
  std::vector<double> of_grate_m3, into_line_m3(tiles.lines.size(), 0.0);
  for (const TileGrate& grate : tiles.grates) {
    of_grate_m3.push_back(grate_wants_m3(grate, step_s));
    into_line_m3[grate.line] += of_grate_m3.back();
  }
  for (std::size_t i = 0; i < tiles.roofs.size(); ++i) into_line_m3[tiles.roofs[i].line] += roof_to_tile_m3_[i];
  const TileShares shares = tile_shares(tiles.lines, into_line_m3, tile_levels(), tile_open_ratio_, step_s);
  for (std::size_t i = 0; i < tiles.grates.size(); ++i)
    take_from_grate(i, of_grate_m3[i] * shares.of_line[tiles.grates[i].line]);
  for (std::size_t i = 0; i < tiles.roofs.size(); ++i) take_from_roof(i, shares.of_line[tiles.roofs[i].line]);
  for (std::size_t line = 0; line < tiles.lines.size(); ++line) {
    tile_full_[line] = shares.wanted_m3[line] > 0 && shares.of_line[line] < 1;
    let_out(line, shares.out_m3[line]);
  }
}

void StormRun::empty_ditches() {
  for (const DitchCell& ditch : ground_.ditches) {
    const double above_m = flow_.depth_m(ditch.cell) - ditch.depth_m;
    if (above_m > 0) taken_away_m3_ -= flow_.add(ditch.cell, -above_m) * flow_.frame().cell_area_m2();
  }
}

/// Over every stretch of the rim as over a weir, until the pit is full.
double StormRun::take_over_rim(std::size_t pit, double step_s) {
  const double rim_m = pits_.pits()[pit].rim_m, cell_m2 = flow_.frame().cell_area_m2();
  const std::vector<RimStretch>& rim = ground_.mouths[pit].rim;
  std::vector<double> wanted_m3;
  for (const RimStretch& stretch : rim) {
    const double head_m = flow_.level_m(stretch.cell) - rim_m;
    const double most_m3 = std::min(head_m, flow_.depth_m(stretch.cell)) * cell_m2 * most_in_a_step;
    wanted_m3.push_back(
        head_m > 0 ? std::min(weir_m3_per_s(sharp_weir_ratio, stretch.length_m, head_m) * step_s, most_m3) : 0);
  }
  const double all_m3 = std::accumulate(wanted_m3.begin(), wanted_m3.end(), 0.0);
  if (all_m3 <= 0) return 0;
  const double room_m3 = std::max(0.0, pits_.room_m3(pit));
  const double share = std::min(1.0, room_m3 / all_m3);
  full_[pit] = share < 1;
  double taken_m3 = 0;
  for (std::size_t i = 0; i < rim.size(); ++i) {
    if (wanted_m3[i] > 0) taken_m3 -= flow_.add(rim[i].cell, -wanted_m3[i] * share / cell_m2) * cell_m2;
  }
  return taken_m3;
}

void StormRun::run_pits(double step_s) {
  std::vector<double> in_m3(pits_.pits().size(), 0.0);
  std::ranges::fill(full_, std::uint8_t{0});
  for (std::size_t pit = 0; pit < in_m3.size(); ++pit) {
    in_m3[pit] = take_over_rim(pit, step_s) + pit_rain_m3_[pit] + pit_from_tiles_m3_[pit];
    pit_rain_m3_[pit] = pit_from_tiles_m3_[pit] = 0;
    pit_in_m3_[pit] += in_m3[pit];
  }
  pits_.step(step_s, in_m3);
  for (std::size_t pit = 0; pit < in_m3.size(); ++pit) {
    const std::vector<RimStretch>& rim = ground_.mouths[pit].rim;
    const double depth_m =
        pits_.state(pit).spilled_m3 / (static_cast<double>(rim.size()) * flow_.frame().cell_area_m2());
    if (depth_m > 0) {
      full_[pit] = 1;
      for (const RimStretch& stretch : rim) flow_.add(stretch.cell, depth_m);
    }
  }
}

void StormRun::step(double until_s) {
  constexpr double least_step_s = 1e-6;
  double step_s = flow_.stable_step_s(std::max(until_s - now_s_, least_step_s));
  // Rain comes a little early rather than cut the last step before it short.
  if (now_s_ + step_s > rained_until_s_) {
    rain_until(std::max(rained_until_s_, std::min(until_s, now_s_ + rain_every_s)));
    step_s = flow_.stable_step_s(std::max(std::min(until_s, rained_until_s_) - now_s_, least_step_s));
  }
  run_culverts(step_s);
  run_tiles(step_s);
  run_pits(step_s);
  flow_.step(step_s);
  empty_ditches();
  now_s_ += step_s;
  ++steps_;
}

double StormRun::level_at_rim_m(std::size_t pit) const {
  double highest_m = pits_.pits()[pit].rim_m;
  for (const RimStretch& stretch : ground_.mouths[pit].rim) {
    if (flow_.depth_m(stretch.cell) > 0) highest_m = std::max(highest_m, flow_.level_m(stretch.cell));
  }
  return highest_m;
}

WaterBalance StormRun::balance() const {
  WaterBalance water = water_;
  water.on_ground_m3 = flow_.stored_m3();
  water.in_pits_m3 = pits_.standing_m3() + std::accumulate(pit_rain_m3_.begin(), pit_rain_m3_.end(), 0.0);
  water.pumped_m3 = pits_.pumped_m3();
  water.in_pits_m3 += std::accumulate(roof_to_tile_m3_.begin(), roof_to_tile_m3_.end(), 0.0);
  water.left_m3 = flow_.left_m3() + taken_away_m3_;
  return water;
}

}  // namespace yardwright::drain::storm
