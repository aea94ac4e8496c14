// Reach: can every bin be filled by gravity from the leg? Judges the slope, the free span and the clear distance
// of every spout, the outlets of every distributor, and names the bins that no spout fills.
// Method, sources and limits: docs/methods/reach.md.
#pragma once

#include <vector>

#include "geom/ground/design_surface.hpp"
#include "geom/reach/reach_ring.hpp"
#include "geom/reach/spout_line.hpp"
#include "geom/site/catalog/catalogs.hpp"
#include "geom/site/finding.hpp"

namespace yardwright::reach {

struct CheckedSpout {
  ItemId spout, leg, receiver;
  SpoutLine line;
  Angle least_slope;
  double discharge_needed_m = 0;  ///< of the leg, above the ground at it, for the least slope
};

struct Answer {
  Findings findings;
  std::vector<CheckedSpout> spouts;
  std::vector<ReachRing> rings;  ///< a leg and size of bin each, for dry grain
};

Answer ask(const Site& site, const DesignSurface& surface, const Catalogs& catalogs);

}  // namespace yardwright::reach
