#include "geom/shape/spread.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace yardwright {

namespace {

/// Sides of a polygon around a circle whose corners lie no more than `off_m` outside it.
int sides_around(double radius_m, double off_m) {
  constexpr double fewest = 8, most = 720;
  if (radius_m <= 0) return static_cast<int>(fewest);
  const double half_turn = std::acos(radius_m / (radius_m + off_m));
  return static_cast<int>(std::clamp(std::ceil(std::numbers::pi / half_turn), fewest, most));
}

std::vector<SitePoint> counter_clockwise(std::vector<SitePoint> ring) {
  double twice_area = 0;
  for (std::size_t i = 0; i < ring.size(); ++i)
    twice_area += cross(ring[i] - SitePoint{}, ring[(i + 1) % ring.size()] - SitePoint{});
  if (twice_area < 0) std::ranges::reverse(ring);
  return ring;
}

/// From its lowest corner (of those the westmost) on.
std::vector<SitePoint> from_lowest(std::vector<SitePoint> ring) {
  const auto lowest =
      std::ranges::min_element(ring, [](SitePoint a, SitePoint b) { return a.y < b.y || (a.y == b.y && a.x < b.x); });
  std::ranges::rotate(ring, lowest);
  return ring;
}

Polygon convex_polygon(const Outline& outline) {
  if (const Disc* disc = std::get_if<Disc>(&outline)) {
    if (disc->radius_m <= 0) return {{disc->centre}, {}};
    return around_disc(disc->centre, disc->radius_m);
  }
  return hull_of(std::get<Polygon>(outline).outer);
}

/// The shape grown by a distance: what every piece of an area is summed with.
Polygon with_margin(const Outline& shape, double by_m) {
  if (const Disc* disc = std::get_if<Disc>(&shape)) {
    const double radius_m = disc->radius_m + by_m;
    return radius_m > 0 ? around_disc(disc->centre, radius_m) : Polygon{{disc->centre}, {}};
  }
  const Polygon polygon = convex_polygon(shape);
  return by_m > 0 ? sum_of(polygon, around_disc({}, by_m)) : polygon;
}

bool is_convex(const Polygon& polygon) {
  const std::size_t corners = polygon.outer.size();
  bool left = false, right = false;
  for (std::size_t i = 0; i < corners; ++i) {
    const SiteVector in = polygon.outer[(i + 1) % corners] - polygon.outer[i];
    const double turn = cross(in, polygon.outer[(i + 2) % corners] - polygon.outer[(i + 1) % corners]);
    left |= turn > 0;
    right |= turn < 0;
  }
  return polygon.holes.empty() && !(left && right);
}

Polygon shifted(Polygon polygon, SiteVector by) {
  for (SitePoint& p : polygon.outer) p = p + by;
  for (auto& hole : polygon.holes)
    for (SitePoint& p : hole) p = p + by;
  return polygon;
}

}  // namespace

Polygon around_disc(SitePoint centre, double radius_m, double off_m) {
  const int sides = sides_around(radius_m, off_m);
  return disc(centre, radius_m / std::cos(std::numbers::pi / sides), sides);
}

// Andrew's monotone chain.
Polygon hull_of(std::vector<SitePoint> points) {
  std::ranges::sort(points, [](SitePoint a, SitePoint b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
  points.erase(std::unique(points.begin(), points.end()), points.end());
  if (points.size() < 3) return {std::move(points), {}};
  std::vector<SitePoint> hull;
  const auto take = [&](SitePoint p, std::size_t keep) {
    while (hull.size() > keep && cross(hull.back() - hull[hull.size() - 2], p - hull.back()) <= 0) hull.pop_back();
    hull.push_back(p);
  };
  for (const SitePoint& p : points) take(p, 1);
  const std::size_t lower = hull.size();
  for (std::size_t i = points.size() - 1; i-- > 0;) take(points[i], lower);
  hull.pop_back();
  return {std::move(hull), {}};
}

Polygon sum_of(const Polygon& a, const Polygon& b) {
  if (a.outer.empty() || b.outer.empty()) return {};
  const auto one = from_lowest(counter_clockwise(a.outer)), other = from_lowest(counter_clockwise(b.outer));
  std::vector<SitePoint> sum;
  std::size_t i = 0, j = 0;
  while (i < one.size() || j < other.size()) {
    sum.push_back(one[i % one.size()] + (other[j % other.size()] - SitePoint{}));
    const SiteVector along_one = one[(i + 1) % one.size()] - one[i % one.size()];
    const SiteVector along_other = other[(j + 1) % other.size()] - other[j % other.size()];
    const double turn = cross(along_one, along_other);
    if (j >= other.size() || (i < one.size() && turn > 0)) {
      ++i;
    } else if (i >= one.size() || turn < 0) {
      ++j;
    } else {
      ++i;
      ++j;
    }
  }
  return hull_of(std::move(sum));
}

Outline turned_back(const Outline& outline, SitePoint centre) {
  if (const Disc* disc = std::get_if<Disc>(&outline))
    return Disc{SitePoint{} + (centre - disc->centre), disc->radius_m};
  Polygon back;
  for (const SitePoint& corner : std::get<Polygon>(outline).outer)
    back.outer.push_back(SitePoint{} + (centre - corner));
  return back;
}

Polygon grown_by(const Outline& area, const Outline& shape, double by_m) {
  const Disc *round = std::get_if<Disc>(&area), *disc = std::get_if<Disc>(&shape);
  if (round != nullptr && disc != nullptr)
    return around_disc(round->centre + (disc->centre - SitePoint{}), round->radius_m + disc->radius_m + by_m);
  return sum_of(convex_polygon(area), with_margin(shape, by_m));
}

Region outline_grown_by(const Outline& area, const Outline& shape, double by_m) {
  const Polygon* polygon = std::get_if<Polygon>(&area);
  if (polygon == nullptr || is_convex(*polygon)) return {grown_by(area, shape, by_m)};
  return pieces_grown_by(Region{*polygon}, shape, by_m);
}

Region pieces_grown_by(const Region& region, const Outline& shape, double by_m) {
  const Polygon grown = with_margin(shape, by_m);
  Region pieces;
  for (const Polygon& polygon : region) {
    const auto around = [&](const std::vector<SitePoint>& ring) {
      for (std::size_t i = 0; i < ring.size(); ++i)
        pieces.push_back(sum_of(hull_of({ring[i], ring[(i + 1) % ring.size()]}), grown));
    };
    pieces.push_back(shifted(polygon, grown.outer.front() - SitePoint{}));
    around(polygon.outer);
    for (const auto& hole : polygon.holes) around(hole);
  }
  return pieces;
}

Region pieces_grown_by(const SitePath& line, const Outline& shape, double by_m) {
  const Polygon grown = with_margin(shape, by_m);
  Region pieces;
  for (std::size_t i = 1; i < line.size(); ++i) pieces.push_back(sum_of(hull_of({line[i - 1], line[i]}), grown));
  return pieces;
}

}  // namespace yardwright
