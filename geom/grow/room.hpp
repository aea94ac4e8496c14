// Room to grow: how many more things of a kind and size fit in the yard as it stands, each with its spout, none of them
// against a rule by what stands there or by each other. docs/methods/grow.md
#pragma once

#include "geom/grow/allowed_region.hpp"
#include "geom/grow/packing.hpp"

namespace yardwright::grow {

struct Room {
  std::vector<SitePoint> places;  ///< of things that can stand at once; the one nearest to a leg first
  int at_most = 0;                ///< no layout has more
  bool of_free_ground = true;     ///< else of ground against which advice speaks
};

/// `region` is the newcomer's own. Places are proven one after the other, each in the yard with those before it.
Room room_for(const Newcomer& newcomer, const AllowedRegion& region, const PackingEffort& effort = {});

/// Where the newcomer's place may not lie from another thing whose place is the origin, the two alone on a bare lot.
Region in_the_way_of(const Newcomer& newcomer, const Thing& other);

/// What builds them, in this order, each with its spout; numbered from the newcomer's id on.
Edits built_at(const Newcomer& newcomer, const std::vector<SitePoint>& places);

}  // namespace yardwright::grow
