// Areas grown by other areas: where the centre of a thing may not lie if the thing is to stay off an area. Sums of
// convex polygons edge by edge, after Minkowski. Round shapes are polygons drawn around their circle, so that what is
// grown is never too small, and too large by no more than `round_off_m`.
#pragma once

#include "geom/shape/outline.hpp"
#include "geom/shape/polygon.hpp"

namespace yardwright {

inline constexpr double round_off_m = 0.005;

/// A regular polygon around a circle: its sides touch it.
Polygon around_disc(SitePoint centre, double radius_m, double off_m = round_off_m);

/// The smallest convex polygon around the points, counter-clockwise.
Polygon hull_of(std::vector<SitePoint> points);

/// Every sum of a point of one and a point of the other, both convex and counter-clockwise; `b` about the origin.
Polygon sum_of(const Polygon& a, const Polygon& b);

/// The outline turned half around the origin: an area grown by it holds the centres at which it would meet the area.
Outline turned_back(const Outline& outline, SitePoint centre);

/// A convex outline grown by a convex one about the origin and then by a distance.
Polygon grown_by(const Outline& area, const Outline& shape, double by_m);

/// The same of an outline that need not be convex.
Region outline_grown_by(const Outline& area, const Outline& shape, double by_m);

/// Any region or line grown by a convex outline about the origin and then by a distance: pieces that overlap.
Region pieces_grown_by(const Region& region, const Outline& shape, double by_m);
Region pieces_grown_by(const SitePath& line, const Outline& shape, double by_m);

}  // namespace yardwright
