// What a placed thing covers on the plan: a round thing stays a disc, so that wall-to-wall distances between
// bins are exact; everything else is a polygon.
#pragma once

#include <variant>

#include "geom/shape/polygon.hpp"

namespace yardwright {

struct Disc {
  SitePoint centre;
  double radius_m = 0;
  bool operator==(const Disc&) const = default;
};

using Outline = std::variant<Disc, Polygon>;

NearestPair nearest_pair(const Outline& a, const Outline& b);
NearestPair nearest_pair(const Outline& a, const SitePath& b);
bool contains(const Outline& outline, SitePoint point);
Polygon as_polygon(const Outline& outline, int corners = 64);
Box box_of(const Outline& outline);

}  // namespace yardwright
