// The nearest points of one body, as a box in its own frame, and an outline. Metres.
#pragma once

#include "geom/shape/outline.hpp"
#include "geom/turn/body.hpp"

namespace yardwright::turn {

/// A body set down: its centre, its way ahead, half its length and half its width.
struct PlacedBox {
  SitePoint centre;
  SiteVector ahead;
  double half_length_m = 0;
  double half_width_m = 0;

  double reach_m() const { return std::hypot(half_length_m, half_width_m); }
};

PlacedBox placed(const Body& body, const UnitPose& pose);

/// `a` on the box, `b` on the other; both the same point where they meet.
NearestPair nearest_pair(const PlacedBox& box, const Disc& disc);
NearestPair nearest_pair(const PlacedBox& box, const std::vector<SitePoint>& ring);
NearestPair nearest_pair_to_line(const PlacedBox& box, const SitePath& line);

}  // namespace yardwright::turn
