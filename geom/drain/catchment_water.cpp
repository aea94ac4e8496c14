#include "geom/drain/catchment_water.hpp"

#include <algorithm>

namespace yardwright::drain {

namespace {

/// Roofs are raised so that they turn water: a slope measured over their edge would be none.
std::vector<Cell> below_roofs(std::vector<Cell> way, const CoverMap& covers) {
  const auto last_roof = std::find_if(way.rbegin(), way.rend(), [&](Cell cell) { return covers.at(cell).roof; });
  way.erase(way.begin(), last_roof.base());
  return way;
}

}  // namespace

CatchmentWater catchment_water(const Flow& flow, const CoverMap& covers, const ChannelMap& channels,
                               const std::vector<Cell>& cells, const std::vector<Cell>& outlets,
                               double two_year_rain_m) {
  CatchmentWater water;
  water.covers = cover_parts(covers, flow.frame, cells);
  for (const CoverPart& part : water.covers) water.area_m2 += part.area_m2;
  water.curve_number = composite_curve_number(water.covers);
  water.rational_c = composite_rational_c(water.covers);
  water.longest_way = below_roofs(longest_path(flow, cells, outlets), covers);
  water.concentration = concentration_along(flow, covers, channels, water.longest_way, two_year_rain_m);
  return water;
}

}  // namespace yardwright::drain
