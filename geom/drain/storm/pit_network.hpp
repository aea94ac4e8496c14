// Pits as tanks: water comes in over their rims and through tunnels from other pits, pumps lift it out, and what a full
// pit cannot take stands over its rim. Straight walls. Levels in metres in the datum of the ground. In = pumped + standing
// + spilled, to rounding. Weirs of tunnels by geom/drain/openings. Page: docs/methods/storm.md.
#pragma once

#include <optional>
#include <vector>

#include "geom/site/item.hpp"

namespace yardwright::drain::storm {

/// A float switch starts it at one level and stops it at a lower one.
struct SumpPump {
  double rate_m3_per_s = 0;
  double on_level_m = 0;
  double off_level_m = 0;
  bool works = true;
  double shutoff_head_m = 0;     ///< at which it lifts nothing; 0: the same rate at any head
  double discharge_level_m = 0;  ///< to which it lifts

  /// Head falls with the square of the rate, from the shut-off head to none at the full rate.
  double rate_at_m3_per_s(double level_m) const;
};

struct PitTank {
  ItemId item;
  double floor_m = 0;
  double rim_m = 0;
  double plan_m2 = 0;
  SumpPump pump;

  double holds_m3() const { return (rim_m - floor_m) * plan_m2; }
};

/// Between two pits, by their places in the list; water runs once it stands over the sill on either side. A sill is no
/// lower than either floor.
struct TunnelLink {
  std::size_t from = 0;
  std::size_t to = 0;
  double sill_m = 0;
  double width_m = 0;
  double height_m = 0;
};

struct PitState {
  double volume_m3 = 0;
  double pumped_m3 = 0;   ///< since the beginning
  double tunnels_m3 = 0;  ///< come through tunnels, less what went, since the beginning
  double spilled_m3 = 0;  ///< over its rim, in the last step
  bool pump_runs = false;
};

class PitNetwork {
 public:
  PitNetwork() = default;
  /// Dry pits, pumps standing.
  PitNetwork(std::vector<PitTank> pits, std::vector<TunnelLink> tunnels);

  const std::vector<PitTank>& pits() const { return pits_; }
  const PitState& state(std::size_t pit) const { return states_[pit]; }
  double level_m(std::size_t pit) const { return pits_[pit].floor_m + states_[pit].volume_m3 / pits_[pit].plan_m2; }
  double room_m3(std::size_t pit) const { return pits_[pit].holds_m3() - states_[pit].volume_m3; }
  double standing_m3() const;
  double pumped_m3() const;

  /// Puts a volume into a pit at the beginning, no more than it holds.
  void fill(std::size_t pit, double volume_m3);
  /// Takes a volume into each pit over a step; what stands over a rim after it is in `spilled_m3` and gone from here.
  void step(double step_s, const std::vector<double>& inflow_m3);

 private:
  void run_tunnels(double step_s);
  void run_pump(std::size_t pit, double step_s);

  std::vector<PitTank> pits_;
  std::vector<TunnelLink> tunnels_;
  std::vector<PitState> states_;
};

}  // namespace yardwright::drain::storm
