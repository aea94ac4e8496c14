// The water of a storm over the plan, in site metres: its depth as a tint, darker where deeper, and arrows where it runs.
#pragma once

#include "geom/drain/storm/storm.hpp"
#include "geom/sheet/drawing.hpp"

namespace yardwright {

/// At one moment; an arrow stands for every square of a side of `arrow_every_m`, no finer than a cell.
Drawing storm_drawing(const drain::storm::StormFrame& frame, const GridFrame& ground, double arrow_every_m);

/// The deepest that it was anywhere, without arrows.
Drawing deepest_water_drawing(const Grid<float>& deepest_m);

/// The tint of a depth, for keys.
Colour tint_of_depth(double depth_m);

}  // namespace yardwright
