// What a question has computed, drawn over the plan in site metres: the area that a vehicle sweeps, the water that
// stands. The findings' own signs are drawn by overlay.hpp.
#pragma once

#include "geom/drain/drain.hpp"
#include "geom/sheet/drawing.hpp"
#include "geom/turn/turn.hpp"

namespace yardwright {

/// The edge of the area that each route's bodies sweep, and the path of the front axle.
Drawing turn_drawing(const turn::Answer& answer);

/// Ponds and the catchment of each pit.
Drawing drain_drawing(const drain::Answer& answer);

}  // namespace yardwright
