// Whether and where a way comes to the stops of its route, each after the one before. Metres along the way.
#pragma once

#include <limits>
#include <vector>

#include "geom/site/site.hpp"

namespace yardwright::turn {

struct Arrival {
  ItemId stop;
  double gap_m = std::numeric_limits<double>::infinity();  ///< from the way to what the stop covers
  double station_m = 0;                                    ///< just past where it is nearest
};

/// Of every stop that the site has, in their order: sought from the last stop on that the way came to within `within_m`.
std::vector<Arrival> arrivals(const Site& site, const std::vector<ItemId>& stops, const SitePath& way, double within_m);

}  // namespace yardwright::turn
