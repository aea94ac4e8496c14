// How far from a leg a bin of a size can stand and still be filled: the ring of the farthest centres, bearing by
// bearing, since the inlet rises and falls with the ground under the bin.
#pragma once

#include <string>
#include <vector>

#include "geom/reach/spout_line.hpp"

namespace yardwright::reach {

struct ReachRing {
  ItemId leg;
  double diameter_m = 0;
  double eave_height_m = 0;
  std::vector<SitePoint> ring;  ///< empty where a bin of that size cannot be reached at all
};

/// The ring for bins like `bin` at a least slope; `bearings` points evenly around.
ReachRing reach_ring(ItemId leg_id, const Leg& leg, const Bin& bin, Angle least_slope, const DesignSurface& surface,
                     int bearings = 72);

}  // namespace yardwright::reach
