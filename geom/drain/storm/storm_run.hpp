// One storm in hand: the ground, the water on it and in the pits, and the clock. storm.hpp tells its story.
#pragma once

#include "geom/drain/storm/rainfall.hpp"
#include "geom/drain/storm/standing_water.hpp"
#include "geom/drain/storm/storm.hpp"
#include "geom/drain/storm/surface_flow.hpp"

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
  void run_pits(double step_s);
  double take_over_rim(std::size_t pit, double step_s);

  const StormGround& ground_;
  Rainfall rain_;
  SurfaceFlow flow_;
  PitNetwork pits_;
  double open_ratio_ = 1;  ///< of the inlets
  double now_s_ = 0, rained_until_s_ = 0;
  std::int64_t steps_ = 0;
  std::vector<double> pit_rain_m3_;  ///< fallen into open pits, not yet taken
  std::vector<double> pit_in_m3_, culvert_m3_;
  std::vector<std::uint8_t> full_;
  std::vector<RatedCulvert> rated_;
  std::vector<double> cells_of_kind_;
  WaterBalance water_;
};

}  // namespace yardwright::drain::storm
