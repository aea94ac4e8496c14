// What each item covers on the plan, and how it is moved and turned.
#pragma once

#include <optional>

#include "geom/shape/outline.hpp"
#include "geom/site/item.hpp"

namespace yardwright {

/// The area that a solid thing covers at ground level: bins, legs, dryers, stands, receiving, buildings, tanks,
/// scales, retaining walls. Things that are walked or driven over, lines and words cover nothing.
std::optional<Outline> footprint(const Thing& thing);

/// The hole of a pit in the ground, for every kind that has one (leg, receiving, pit), where it has a depth.
std::optional<Polygon> pit_hole(const Thing& thing);
/// The pit of a leg, receiving or pit; null for other kinds and where its depth is zero.
const PitBody* pit_body(const Thing& thing);
PitBody* pit_body(Thing& thing);

/// Everything that the thing's drawing covers, lines and holes included: what a click picks and fit() frames.
Outline extent(const Thing& thing);

/// Its place: centre, or the middle of its path.
SitePoint place_of(const Thing& thing);
/// The line of a kind that is drawn as one (drive, berm, overhead line ...) or the ring of an outlined area.
const SitePath* path_of(const Thing& thing);
SitePath* path_of(Thing& thing);
/// Whether that line is a ring around an area.
bool is_ring(const Thing& thing);

Thing moved(Thing thing, SiteVector by);
Thing turned(Thing thing, SitePoint pivot, Angle clockwise);

}  // namespace yardwright
