#include "geom/grow/leg_heights.hpp"

#include <algorithm>
#include <cmath>

#include "geom/grow/room.hpp"
#include "geom/grow/spout_reach.hpp"

namespace yardwright::grow {

namespace {

constexpr double tallest_leg_m = 100.0;  // the greatest discharge height that a leg's field allows

/// A taller leg gets a distributor of its own.
Site with_discharge(Site site, ItemId leg, double discharge_m) {
  for (Item& item : site.items) {
    if (item.id != leg) continue;
    std::get<Leg>(item.thing).discharge_height_m = discharge_m;
    std::get<Leg>(item.thing).outlets = outlets_of_taller_leg;
  }
  return site;
}

double reached_m2(const Newcomer& newcomer) {
  Region reached;
  for (const LegReach& one : leg_reaches(newcomer))
    reached.insert(reached.end(), one.reached.begin(), one.reached.end());
  return area_m2(common(united(reached), {Polygon{newcomer.site.lot.corners, {}}}));
}

AtHeight at_height(const Newcomer& newcomer, ItemId leg, double discharge_m) {
  const Site site = with_discharge(newcomer.site, leg, discharge_m);
  const Newcomer there{site, newcomer.answers, newcomer.rules, newcomer.item, newcomer.shape, newcomer.behind};
  const AllowedRegion region = allowed_region(there);
  const Room room = room_for(there, region, {.tries = 0});
  return {discharge_m, reached_m2(there), area_m2(region.bearable), area_m2(region.free),
          static_cast<int>(room.places.size())};
}

}  // namespace

std::vector<AtHeight> at_heights(const Newcomer& newcomer, ItemId leg, int steps, const std::stop_token& stop) {
  std::vector<AtHeight> all;
  const Item* item = find(newcomer.site, leg);
  if (item == nullptr || as<Leg>(*item) == nullptr || newcomer.site.lot.corners.size() < 3) return all;
  const double step_m = newcomer.rules.at("grow.leg-step").value, now_m = as<Leg>(*item)->discharge_height_m;
  for (int i = 0; i <= steps && !stop.stop_requested(); ++i) {
    const double whole_m = std::floor(now_m / step_m + 1e-9) * step_m;
    const double height_m = i == 0 ? now_m : whole_m + i * step_m;
    if (height_m > tallest_leg_m) break;
    all.push_back(at_height(newcomer, leg, height_m));
    // What stands and is filled under a lower leg is so under a taller one: every spout is steeper and hangs higher.
    if (i > 0) all.back().bins = std::max(all.back().bins, all[all.size() - 2].bins);
  }
  return all;
}

const AtHeight* best_gain(const std::vector<AtHeight>& heights) {
  const AtHeight* best = nullptr;
  const auto gain = [&](const AtHeight& one) {
    return (one.bins - heights.front().bins) / (one.discharge_m - heights.front().discharge_m);
  };
  for (std::size_t i = 1; i < heights.size(); ++i) {
    if (gain(heights[i]) > (best != nullptr ? gain(*best) + 1e-9 : 0)) best = &heights[i];
  }
  return best;
}

}  // namespace yardwright::grow
