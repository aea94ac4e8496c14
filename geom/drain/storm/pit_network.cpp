#include "geom/drain/storm/pit_network.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

#include "geom/drain/openings.hpp"

namespace yardwright::drain::storm {

namespace {

/// By the heads over the sill of the higher and the lower side: a weir, then, under its crown, an orifice.
double tunnel_m3_per_s(const TunnelLink& tunnel, double head_m, double far_head_m) {
  const double as_weir =
      weir_m3_per_s(broad_weir_ratio, tunnel.width_m, head_m) * drowned_weir_ratio(head_m, far_head_m);
  if (head_m <= tunnel.height_m) return as_weir;
  const double fall_m = head_m - std::max(far_head_m, tunnel.height_m / 2);
  return std::min(as_weir, orifice_m3_per_s(square_orifice_ratio, tunnel.width_m * tunnel.height_m, fall_m));
}

/// That would bring two tanks to one level, or the higher one down to the sill.
double levelling_m3(double high_m2, double low_m2, double high_m, double low_m, double sill_m) {
  const double to_sill_m3 = (high_m - sill_m) * high_m2;
  const double low_to_sill_m3 = std::max(0.0, (sill_m - low_m) * low_m2);
  if (to_sill_m3 <= low_to_sill_m3) return to_sill_m3;
  return (high_m - low_m) * high_m2 * low_m2 / (high_m2 + low_m2);
}

}  // namespace

double SumpPump::rate_at_m3_per_s(double level_m) const {
  if (shutoff_head_m <= 0) return rate_m3_per_s;
  const double head_ratio = std::max(0.0, discharge_level_m - level_m) / shutoff_head_m;
  return rate_m3_per_s * std::sqrt(std::max(0.0, 1 - head_ratio));
}

PitNetwork::PitNetwork(std::vector<PitTank> pits, std::vector<TunnelLink> tunnels)
    : pits_{std::move(pits)}, tunnels_{std::move(tunnels)}, states_(pits_.size()) {
  for ([[maybe_unused]] const PitTank& pit : pits_) assert(pit.plan_m2 > 0 && pit.rim_m > pit.floor_m);
  for (TunnelLink& tunnel : tunnels_) {
    assert(tunnel.from < pits_.size() && tunnel.to < pits_.size());
    tunnel.sill_m = std::max({tunnel.sill_m, pits_[tunnel.from].floor_m, pits_[tunnel.to].floor_m});
  }
}

double PitNetwork::standing_m3() const {
  double sum = 0;
  for (const PitState& state : states_) sum += state.volume_m3;
  return sum;
}

double PitNetwork::pumped_m3() const {
  double sum = 0;
  for (const PitState& state : states_) sum += state.pumped_m3;
  return sum;
}

void PitNetwork::fill(std::size_t pit, double volume_m3) {
  assert(volume_m3 <= room_m3(pit) * (1 + 1e-9));
  states_[pit].volume_m3 += volume_m3;
}

void PitNetwork::run_tunnels(double step_s) {
  for (const TunnelLink& tunnel : tunnels_) {
    const bool forward = level_m(tunnel.from) >= level_m(tunnel.to);
    const std::size_t high = forward ? tunnel.from : tunnel.to, low = forward ? tunnel.to : tunnel.from;
    const double high_m = level_m(high), low_m = level_m(low);
    if (high_m <= tunnel.sill_m) continue;
    const double wanted_m3 = tunnel_m3_per_s(tunnel, high_m - tunnel.sill_m, low_m - tunnel.sill_m) * step_s;
    const double most_m3 = levelling_m3(pits_[high].plan_m2, pits_[low].plan_m2, high_m, low_m, tunnel.sill_m);
    const double moved_m3 = std::min({wanted_m3, most_m3, states_[high].volume_m3});
    states_[high].volume_m3 -= moved_m3;
    states_[high].tunnels_m3 -= moved_m3;
    states_[low].volume_m3 += moved_m3;
    states_[low].tunnels_m3 += moved_m3;
  }
}

void PitNetwork::run_pump(std::size_t pit, double step_s) {
  const PitTank& tank = pits_[pit];
  PitState& state = states_[pit];
  const double above_stop_m3 = std::min((level_m(pit) - tank.pump.off_level_m) * tank.plan_m2, state.volume_m3);
  const bool can_run = tank.pump.works && tank.pump.rate_at_m3_per_s(level_m(pit)) > 0 && above_stop_m3 > 0;
  state.pump_runs = can_run && (state.pump_runs || level_m(pit) >= tank.pump.on_level_m);
  if (!state.pump_runs) return;
  const double lifted_m3 = std::min(tank.pump.rate_at_m3_per_s(level_m(pit)) * step_s, above_stop_m3);
  state.pump_runs = lifted_m3 < above_stop_m3;
  state.volume_m3 -= lifted_m3;
  state.pumped_m3 += lifted_m3;
}

void PitNetwork::step(double step_s, const std::vector<double>& inflow_m3) {
  assert(inflow_m3.size() == pits_.size());
  for (std::size_t pit = 0; pit < pits_.size(); ++pit) states_[pit].volume_m3 += inflow_m3[pit];
  run_tunnels(step_s);
  for (std::size_t pit = 0; pit < pits_.size(); ++pit) {
    run_pump(pit, step_s);
    PitState& state = states_[pit];
    state.spilled_m3 = std::max(0.0, state.volume_m3 - pits_[pit].holds_m3());
    state.volume_m3 -= state.spilled_m3;
  }
}

}  // namespace yardwright::drain::storm
