// The water of a section as areas between the ground and its level, each ended where the level meets the ground.
#pragma once

#include "geom/sheet/section_drawing.hpp"

namespace yardwright {

/// Chainage and level along the top of the water, and back along the ground.
struct WaterBody {
  std::vector<DrawPoint> top;
  std::vector<DrawPoint> bed;  ///< in the order of the top
};

/// Where its level is not over the ground there is no water, whatever the level says.
std::vector<WaterBody> water_bodies(const GroundSection& ground, const drain::storm::WaterLevels& levels);

/// The levels with those over a pit that is full put in from beside it: the storm keeps no cells in its hole.
drain::storm::WaterLevels over_full_pits(const SectionView& view, drain::storm::WaterLevels levels);

/// Water inside what lies in the ground.
struct WaterPoint {
  double chainage_m = 0, bed_m = 0, level_m = 0;  ///< the level is between the bed and the top there
};

/// Through the whole of a pit's hole, a tunnel or a culvert that the line crosses; none where it is dry.
std::vector<WaterPoint> water_below(const SectionView& view, const LineCrossing& crossing);

}  // namespace yardwright
