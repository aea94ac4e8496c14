// Levels of what a spout joins, in metres above the ground's datum. They add up from the design ground at the
// item's own place, since a lot slopes: the governing bin is the one with the highest required outlet, not the
// farthest.
#pragma once

#include <optional>

#include "geom/ground/design_surface.hpp"

namespace yardwright::reach {

/// Of the distributor's outlets.
double outlet_level_m(const Leg& leg, const DesignSurface& surface);

/// Height of a kind's inlet over the ground at its place; nothing for kinds that no spout fills.
std::optional<double> inlet_height_m(const Thing& thing);

/// Of the inlet of what a spout fills.
std::optional<double> inlet_level_m(const Thing& thing, const DesignSurface& surface);

}  // namespace yardwright::reach
