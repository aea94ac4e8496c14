#include "geom/turn/arrivals.hpp"

#include <algorithm>

#include "geom/site/footprint.hpp"

namespace yardwright::turn {

namespace {

constexpr double step_m = 0.5;

Arrival arrival(const SitePath& way, double from_m, const Outline& stop) {
  Arrival nearest{{}, std::numeric_limits<double>::infinity(), from_m};
  const Box around = box_of(stop);
  double start_m = 0;
  for (std::size_t i = 1; i < way.size() && nearest.gap_m > 0; ++i) {
    const double leg_m = distance(way[i - 1], way[i]), end_m = start_m + leg_m;
    double at_m = std::max(from_m, start_m);
    if (gap_m(box_of(SitePath{way[i - 1], way[i]}), around) >= nearest.gap_m) at_m = end_m;
    while (at_m < end_m && nearest.gap_m > 0) {
      const double to_m = std::min(at_m + step_m, end_m);
      const SitePath piece{between(way[i - 1], way[i], (at_m - start_m) / leg_m),
                           between(way[i - 1], way[i], (to_m - start_m) / leg_m)};
      const double piece_gap_m = nearest_pair(stop, piece).distance_m;
      if (piece_gap_m < nearest.gap_m) nearest = {{}, piece_gap_m, to_m};
      at_m = to_m;
    }
    start_m = end_m;
  }
  return nearest;
}

}  // namespace

std::vector<Arrival> arrivals(const Site& site, const std::vector<ItemId>& stops, const SitePath& way,
                              double within_m) {
  std::vector<Arrival> all;
  double from_m = 0;
  for (const ItemId id : stops) {
    const Item* stop = find(site, id);
    if (stop == nullptr || way.size() < 2) continue;
    Arrival here = arrival(way, from_m, extent(stop->thing));
    here.stop = id;
    if (here.gap_m <= within_m) from_m = here.station_m;
    all.push_back(here);
  }
  return all;
}

}  // namespace yardwright::turn
