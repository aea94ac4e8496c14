// The grips of a selected item, and what dragging one does: a bin's wall changes its diameter, a side of a box its
// length or width while the far side stays, the round grip turns it, a corner of a line moves, a dot on a line's
// middle becomes a new corner.
#pragma once

#include "geom/site/item.hpp"

namespace yardwright::session {

enum class Grip : std::uint8_t { wall, length_side, width_side, turn, corner, new_corner };

struct Handle {
  Grip grip = Grip::corner;
  SitePoint at;
  int index = 0;  ///< which side (0 ahead, 1 behind) or which corner
  bool operator==(const Handle&) const = default;
};

/// `arm_m` is how far the turning grip stands off the thing.
std::vector<Handle> handles_of(const Thing& thing, double arm_m = 4);

/// The thing with the grip dragged to a point; sizes stay within the limits of their fields.
Thing dragged(Thing thing, const Handle& handle, SitePoint to);

/// Where a pointer at `to` turns a thing that stands at `pivot` to, in whole steps.
SitePoint turned_in_steps(SitePoint pivot, SitePoint to, Angle step);

/// Every number of the thing brought between the least and the most of its field.
Thing within_limits(Thing thing);

}  // namespace yardwright::session
