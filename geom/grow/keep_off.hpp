// Where the place of a newcomer may not lie, one area for every reason. Areas that follow from distances on the plan are
// exact to `round_off_m`, and never too small; those that follow from the ground's levels are sampled (region_where.hpp).
// Site frame, metres. docs/methods/grow.md
#pragma once

#include <string>
#include <vector>

#include "geom/grow/newcomer.hpp"

namespace yardwright::grow {

struct KeepOff {
  std::string rule;  ///< in the rule book
  ItemId item;       ///< what stands there; none where it is the lot, the ground or the reach of legs
  std::string why;   ///< before the item's title, where there is one: "stands too near to"
  double required = 0;
  Verdict worse = Verdict::fail;
  Region area;  ///< polygons that may overlap each other
};

using KeepOffs = std::vector<KeepOff>;

/// The lot's edges by their kinds, what stands, and the free ground that it or the newcomer asks for.
KeepOffs off_what_stands(const Newcomer& newcomer);
/// Overhead lines, by the heights of the port and the conductor over the ground.
KeepOffs off_lines(const Newcomer& newcomer);
/// The ground that trucks sweep, drives, and what carries water.
KeepOffs off_ways(const Newcomer& newcomer);
/// The spouts that hang over the yard already.
KeepOffs off_spouts(const Newcomer& newcomer);
/// Whether one of them comes too near to the newcomer at a place.
bool is_under_a_spout(const Newcomer& newcomer, SitePoint place);
/// Water that stands after the storm, and ground that falls too much across the newcomer.
KeepOffs off_wet_and_steep_ground(const Newcomer& newcomer);

}  // namespace yardwright::grow
