// The small changes of a drawn path that mends of a route try, each by a distance in metres.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "geom/shape/point.hpp"

namespace yardwright::turn {

struct PathChange {
  std::string_view words;              ///< "move a corner of"
  std::function<SitePath(double)> by;  ///< the path changed by so many metres
};

/// One corner moved, in `ways` directions around; an end of the path only along its leg, outward.
void add_corner_moves(std::vector<PathChange>& changes, const SitePath& path, std::size_t corner, int ways);
/// The leg from a corner to the next, moved sideways as it lies, either way.
void add_leg_shifts(std::vector<PathChange>& changes, const SitePath& path, std::size_t leg);
/// A new corner on that leg at the point nearest to a place, drawn towards the place.
void add_new_corner(std::vector<PathChange>& changes, const SitePath& path, std::size_t leg, SitePoint towards);

/// The path without corners that repeat the one before.
SitePath without_repeats(const SitePath& path);

}  // namespace yardwright::turn
