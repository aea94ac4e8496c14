// What stands in a spout's way, as a convex solid: a bin is its cylinder and roof cone, everything else its
// footprint up to its height. The distance of a straight line to a convex solid is a convex function along the
// line, so its least is found to any accuracy by narrowing an interval.
#pragma once

#include <optional>

#include "geom/reach/spout_line.hpp"
#include "geom/shape/outline.hpp"

namespace yardwright::reach {

struct Solid {
  ItemId item;
  Outline outline;
  double base_m = 0;  ///< level of its foot
  double eave_m = 0;  ///< level to which its walls stand
  double peak_m = 0;  ///< level of its roof's point; the eave level where it has no cone
};

/// Nothing for what has no height: drives, lines, pits, scales.
std::optional<Solid> solid_of(const Item& item, const DesignSurface& surface);

/// Least distance between a spout's line and a solid, and the place on the plan where it is.
struct ClearDistance {
  double distance_m = 0;
  SitePoint place;
};
ClearDistance clear_distance(const SpoutLine& line, const Solid& solid);
/// Whether that is less than a distance; much quicker to tell.
bool comes_within(const SpoutLine& line, const Solid& solid, double distance_m);

}  // namespace yardwright::reach
