// One storm in hand: the ground, the water on it and in the pits, and the clock. storm.hpp tells its story.
#pragma once

#include "geom/drain/storm/rainfall.hpp"
#include "geom/drain/storm/standing_water.hpp"
#include "geom/drain/storm/storm.hpp"
#include "geom/drain/storm/surface_flow.hpp"
#include "geom/drain/storm/tile_water.hpp"

namespace yardwright::drain::storm {

class StormRun {
 public:
  /// The ground must outlive it.
  StormRun(const StormGround& ground, const Rainfall& rain, const StormOptions& options, double start_s);

  /// Puts water on the ground and into the pits, before the first step.
  void stand(const StandingWater& water);
  /// One stable step, no further than `until_s`.
  void step(double until_s);

  double now_s() const { return now_s_; }
  std::int64_t steps() const { return steps_; }
  const SurfaceFlow& flow() const { return flow_; }
  const PitNetwork& pits() const { return pits_; }
  double pit_inflow_m3(std::size_t pit) const { return pit_in_m3_[pit]; }  ///< since the beginning
  /// Whether it has turned water away in the last step, or let it out over its rim.
  bool is_full(std::size_t pit) const { return full_[pit] != 0; }
  double culvert_m3(std::size_t culvert) const { return culvert_m3_[culvert]; }  ///< since the beginning
  double tile_m3(std::size_t line) const { return tile_m3_[line]; }      ///< out of its end, since the beginning
  double grate_m3(std::size_t grate) const { return grate_m3_[grate]; }  ///< since the beginning
  /// Whether it has turned water away in the last step.
  bool is_tile_full(std::size_t line) const { return tile_full_[line] != 0; }
  /// The highest water beside a pit; its rim where none stands over it.
  double level_at_rim_m(std::size_t pit) const;
  WaterBalance balance() const;

 private:
  /// What a culvert carried at the levels for which it was last worked out.
  struct RatedCulvert {
    double start_level_m = -1e9, end_level_m = -1e9;
    double flow_m3_per_s = 0;
  };

  void rain_until(double until_s);
  double rated_m3_per_s(std::size_t culvert);
  void run_culverts(double step_s);
  void run_tiles(double step_s);
  std::vector<TileLevels> tile_levels() const;
  double grate_stands_m(const TileGrate& grate) const;  ///< the depths over its cells, summed
  double grate_wants_m3(const TileGrate& grate, double step_s) const;
  void take_from_grate(std::size_t grate, double volume_m3);
  void take_from_roof(std::size_t roof, double taken_share);
  void let_out(std::size_t line, double volume_m3);
  void empty_ditches();
  void run_pits(double step_s);
  double take_over_rim(std::size_t pit, double step_s);

  const StormGround& ground_;
  Rainfall rain_;
  SurfaceFlow flow_;
  PitNetwork pits_;
  double open_ratio_ = 1;       ///< of the inlets
  double tile_open_ratio_ = 1;  ///< of the tile lines
  double now_s_ = 0, rained_until_s_ = 0;
  std::int64_t steps_ = 0;
  std::vector<double> pit_rain_m3_;  ///< fallen into open pits, not yet taken
  std::vector<double> pit_in_m3_, culvert_m3_, tile_m3_, grate_m3_;
  std::vector<double> pit_from_tiles_m3_, roof_to_tile_m3_;  ///< not yet taken
  std::vector<std::uint8_t> tile_full_;
  double taken_away_m3_ = 0;  ///< by tile lines and ditches
  std::vector<std::uint8_t> full_;
  std::vector<RatedCulvert> rated_;
  std::vector<double> cells_of_kind_;
  WaterBalance water_;
};

}  // namespace yardwright::drain::storm
