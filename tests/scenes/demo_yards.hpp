// The demo yards of assets/yards, as values: an invented farm, its old cramped yard at the foot of a slope (US
// units), in which every question has something to say, and its new yard on flatter land (metric). Everything in
// them is invented.
#pragma once

#include "geom/site/site.hpp"

namespace yardwright::scenes {

Site old_yard();
Site new_yard();

/// 60 items on a 400 x 400 m ground of 1 m cells: what the drag budget is stated for.
Site drag_yard();

/// The same on a 1000 x 1000 m ground of 1 m cells: what the frame budget is stated for.
Site million_cell_yard();

}  // namespace yardwright::scenes
