#include "geom/shape/outline.hpp"

#include <algorithm>

namespace yardwright {

namespace {

/// Moves the `centre` end of a pair out to the rim of its disc; meets where the other end lies inside.
NearestPair from_rim(SitePoint centre, double radius_m, SitePoint other) {
  const double far_m = distance(centre, other);
  if (far_m <= radius_m) return {other, other, 0};
  return {centre + (other - centre) * (radius_m / far_m), other, far_m - radius_m};
}

NearestPair swapped(const NearestPair& pair) { return {pair.b, pair.a, pair.distance_m}; }

NearestPair nearest(const Disc& a, const Disc& b) {
  const double far_m = distance(a.centre, b.centre);
  if (far_m <= a.radius_m + b.radius_m) {
    const SitePoint meet = between(a.centre, b.centre, far_m > 0 ? std::min(1.0, a.radius_m / far_m) : 0.0);
    return {meet, meet, 0};
  }
  const SiteVector along = (b.centre - a.centre) * (1 / far_m);
  return {a.centre + along * a.radius_m, b.centre - along * b.radius_m, far_m - a.radius_m - b.radius_m};
}

NearestPair nearest(const Disc& a, const Polygon& b) {
  if (contains(b, a.centre)) return {a.centre, a.centre, 0};
  SitePath ring = b.outer;
  if (!ring.empty()) ring.push_back(ring.front());
  return from_rim(a.centre, a.radius_m, nearest_on_path(ring, a.centre).point);
}

NearestPair nearest(const Polygon& a, const Disc& b) { return swapped(nearest(b, a)); }

NearestPair nearest(const Polygon& a, const Polygon& b) { return nearest_pair(a, b); }

}  // namespace

NearestPair nearest_pair(const Outline& a, const Outline& b) {
  return std::visit([](const auto& one, const auto& other) { return nearest(one, other); }, a, b);
}

NearestPair nearest_pair(const Outline& a, const SitePath& b) {
  if (const Disc* disc = std::get_if<Disc>(&a)) {
    return from_rim(disc->centre, disc->radius_m, nearest_on_path(b, disc->centre).point);
  }
  return nearest_pair(std::get<Polygon>(a), b);
}

bool contains(const Outline& outline, SitePoint point) {
  if (const Disc* disc = std::get_if<Disc>(&outline)) return distance(disc->centre, point) <= disc->radius_m;
  return contains(std::get<Polygon>(outline), point);
}

Polygon as_polygon(const Outline& outline, int corners) {
  if (const Disc* d = std::get_if<Disc>(&outline)) return disc(d->centre, d->radius_m, corners);
  return std::get<Polygon>(outline);
}

Box box_of(const Outline& outline) {
  if (const Disc* disc = std::get_if<Disc>(&outline)) return grown(Box{disc->centre, disc->centre}, disc->radius_m);
  return box_of(std::get<Polygon>(outline).outer);
}

}  // namespace yardwright
