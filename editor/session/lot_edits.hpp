// The lot under the pointer: which edge a click means, what lies across an edge, and its corners as grips.
#pragma once

#include <optional>

#include "editor/session/handles.hpp"
#include "geom/site/site.hpp"

namespace yardwright::session {

/// The edge no farther than `radius_m` from a point, by its first corner; nothing where none is.
std::optional<int> pick_lot_edge(const Lot& lot, SitePoint point, double radius_m);

/// Both ends of an edge; an edge that the lot lacks is our own mistake.
std::pair<SitePoint, SitePoint> lot_edge(const Lot& lot, int edge);

/// "north-east": the way out of the lot across an edge.
std::string_view side_of(const Lot& lot, int edge);

Lot with_edge(Lot lot, int edge, LotEdge across);

/// A grip at every corner, and one on every edge's middle that becomes a new corner.
std::vector<Handle> lot_handles(const Lot& lot);
/// The lot with a grip dragged; as it was where its edges would cross.
Lot dragged(const Lot& lot, const Handle& handle, SitePoint to);
/// The lot without the first corner of an edge; as it was where less than three would be left.
Lot without_corner(const Lot& lot, int corner);

}  // namespace yardwright::session
