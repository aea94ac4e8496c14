// How deep within a region places lie, and the deepest. Squares are parted as long as they could hold a deeper place.
#pragma once

#include <optional>

#include "geom/shape/polygon.hpp"

namespace yardwright {

/// The nearest point of any edge, outer or of a hole; infinite where there is none.
NearestPair nearest_edge(const Region& region, SitePoint point);

/// By the even-odd rule; much quicker than contains(), which is exact on the edges.
bool holds(const Region& region, SitePoint point);

/// To the nearest edge; negative outside the region.
double depth_within_m(const Region& region, SitePoint point);

struct Innermost {
  SitePoint at;
  double depth_m = 0;
};
/// To `off_m` the deepest place; nothing of an empty region.
std::optional<Innermost> innermost(const Region& region, double off_m = 0.02);

}  // namespace yardwright
