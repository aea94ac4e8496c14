// Small yards shared by tests: each states what it holds. Lengths in feet, as the worked cases give them.
#pragma once

#include "geom/site/site.hpp"

namespace yardwright::scenes {

inline constexpr double ft = 0.3048;

/// Ids of the items in the yards below.
inline constexpr ItemId leg_id{1}, bin_id{2}, spout_id{3};

/// Flat ground, a leg at the origin with its outlets at `outlet_ft`, and one bin `run_ft` east of it, joined by a
/// spout for dry grain. The bin: 36 ft diameter, 24 ft eave, 1 ft foundation, 30 degree roof, no inlet box.
Site one_bin_yard(double outlet_ft, double run_ft);

}  // namespace yardwright::scenes
