#include "geom/drain/catchment_water.hpp"

namespace yardwright::drain {

CatchmentWater catchment_water(const Flow& flow, const CoverMap& covers, const ChannelMap& channels,
                               const std::vector<Cell>& cells, const std::vector<Cell>& outlets,
                               double two_year_rain_m) {
  const std::vector<CoverPart> parts = cover_parts(covers, flow.frame, cells);
  CatchmentWater water;
  for (const CoverPart& part : parts) water.area_m2 += part.area_m2;
  water.curve_number = composite_curve_number(parts);
  water.rational_c = composite_rational_c(parts);
  water.longest_way = longest_path(flow, cells, outlets);
  water.concentration = concentration_along(flow, covers, channels, water.longest_way, two_year_rain_m);
  return water;
}

}  // namespace yardwright::drain
