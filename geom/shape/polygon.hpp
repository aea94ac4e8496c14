// Areas on the plan. A Polygon's outer ring and holes are open rings (the last point is not repeated), in either
// sense of rotation. Boolean operations and offsets are Boost.Geometry's, behind this header.
#pragma once

#include <string>
#include <vector>

#include "geom/shape/path.hpp"
#include "geom/shape/point.hpp"

namespace yardwright {

struct Polygon {
  std::vector<SitePoint> outer;
  std::vector<std::vector<SitePoint>> holes;
  bool operator==(const Polygon&) const = default;
};

using Region = std::vector<Polygon>;  ///< disjoint polygons

struct Box {
  SitePoint low, high;
  bool operator==(const Box&) const = default;
};

double area_m2(const Polygon& polygon);
double area_m2(const Region& region);
SitePoint centroid(const Polygon& polygon);
Box box_of(const std::vector<SitePoint>& points);
Box grown(const Box& box, double by_m);
/// Between the nearest points of two boxes; 0 where they meet.
double gap_m(const Box& a, const Box& b);

/// On the boundary counts as inside.
bool contains(const Polygon& polygon, SitePoint point);
bool contains(const Region& region, SitePoint point);

Region united(const Region& parts);
Region without(const Region& region, const Region& removed);
Region common(const Region& a, const Region& b);

/// Grown outward (or inward, where `by_m` is negative) with round corners of `chords_per_turn` chords.
Region offset(const Region& region, double by_m, int chords_per_turn = 64);
/// The strip of a width along a path, with flat ends and round corners.
Region strip(const SitePath& path, double width_m);
/// The path with fewer points, none of those left out farther than `off_m` from it.
SitePath simplified(const SitePath& path, double off_m);

/// A regular polygon around a circle's centre, its corners on the circle.
Polygon disc(SitePoint centre, double radius_m, int corners = 64);
/// A rectangle whose length lies along `facing`.
Polygon rectangle(const Pose& centre, double length_m, double width_m);

/// The nearest pair of points of two areas; distance 0 where they meet (then `a` == `b` is a common point).
struct NearestPair {
  SitePoint a, b;
  double distance_m = 0;
};
NearestPair nearest_pair(const Polygon& a, const Polygon& b);
NearestPair nearest_pair(const Polygon& a, const SitePath& b);

/// The same crossed twice or with too few corners is no area; says what is wrong, or nothing.
std::string what_is_wrong_with(const Polygon& polygon);

}  // namespace yardwright
