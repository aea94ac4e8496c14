// A catchment as the methods of runoff ask for it: its area, what covers it, and its water's longest way.
#pragma once

#include <vector>

#include "geom/drain/concentration.hpp"

namespace yardwright::drain {

struct CatchmentWater {
  double area_m2 = 0;
  std::vector<CoverPart> covers;
  double curve_number = 0;
  double rational_c = 0;
  Concentration concentration;
  std::vector<Cell> longest_way;  ///< from the far end down; what falls on a roof counts as on the ground at once
};

/// Of the cells that drain to one of the outlets.
CatchmentWater catchment_water(const Flow& flow, const CoverMap& covers, const ChannelMap& channels,
                               const std::vector<Cell>& cells, const std::vector<Cell>& outlets,
                               double two_year_rain_m);

}  // namespace yardwright::drain
