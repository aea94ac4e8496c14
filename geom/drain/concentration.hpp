// How long the farthest water of a catchment takes on its way, in the parts of TR-55: sheet flow over at most 100 ft, then
// shallow concentrated flow, and channel flow where the way runs in a drawn channel. Page: docs/methods/drain.md
#pragma once

#include <vector>

#include "geom/drain/channel_map.hpp"
#include "geom/drain/cover_map.hpp"
#include "geom/drain/flow.hpp"

namespace yardwright::drain {

struct Concentration {
  double sheet_m = 0, sheet_s = 0;
  double shallow_m = 0, shallow_s = 0;
  double channel_m = 0, channel_s = 0;
  double total_s() const { return sheet_s + shallow_s + channel_s; }
};

Concentration concentration_along(const Flow& flow, const CoverMap& covers, const ChannelMap& channels,
                                  const std::vector<Cell>& way, double two_year_rain_m);

}  // namespace yardwright::drain
