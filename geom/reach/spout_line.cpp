#include "geom/reach/spout_line.hpp"

#include "geom/site/footprint.hpp"

namespace yardwright::reach {

std::optional<SpoutLine> spout_line(const Site& site, const Spout& spout, const DesignSurface& surface) {
  const Item* source = find(site, spout.from);
  const Item* receiver = find(site, spout.to);
  if (source == nullptr || receiver == nullptr) return std::nullopt;
  const Leg* leg = as<Leg>(*source);
  const auto inlet_m = inlet_level_m(receiver->thing, surface);
  if (leg == nullptr || !inlet_m) return std::nullopt;
  return SpoutLine{leg->at, place_of(receiver->thing), outlet_level_m(*leg, surface), *inlet_m};
}

double discharge_needed_m(const Leg& leg, const DesignSurface& surface, double inlet_level_m, double run_m,
                          Angle slope) {
  const double outlet_m = inlet_level_m + run_m * tan(slope);
  return outlet_m + leg.distributor_drop_m - surface.level_m(leg.at);
}

}  // namespace yardwright::reach
