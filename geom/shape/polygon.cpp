#include "geom/shape/polygon.hpp"

#include <algorithm>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <limits>
#include <numbers>

namespace yardwright {

namespace {

namespace bg = boost::geometry;
using BoostPoint = bg::model::d2::point_xy<double>;
using BoostLine = bg::model::linestring<BoostPoint>;
using BoostPolygon = bg::model::polygon<BoostPoint>;
using BoostRegion = bg::model::multi_polygon<BoostPolygon>;

BoostPolygon to_boost(const Polygon& polygon) {
  BoostPolygon out;
  for (const SitePoint& p : polygon.outer) out.outer().emplace_back(p.x, p.y);
  for (const auto& hole : polygon.holes) {
    auto& ring = out.inners().emplace_back();
    for (const SitePoint& p : hole) ring.emplace_back(p.x, p.y);
  }
  bg::correct(out);
  return out;
}

BoostRegion to_boost(const Region& region) {
  BoostRegion out;
  for (const Polygon& polygon : region) out.push_back(to_boost(polygon));
  return out;
}

template <class Ring>
std::vector<SitePoint> from_ring(const Ring& ring) {
  std::vector<SitePoint> out;
  for (const auto& p : ring) out.push_back({p.x(), p.y()});
  if (out.size() > 1 && out.front() == out.back()) out.pop_back();
  return out;
}

Region from_boost(const BoostRegion& region) {
  Region out;
  for (const auto& polygon : region) {
    Polygon& one = out.emplace_back();
    one.outer = from_ring(polygon.outer());
    for (const auto& hole : polygon.inners()) one.holes.push_back(from_ring(hole));
  }
  return out;
}

BoostRegion united_boost(std::vector<BoostRegion> parts) {
  if (parts.empty()) return {};
  while (parts.size() > 1) {  // in pairs, so that no operand grows large early
    std::vector<BoostRegion> halved;
    for (std::size_t i = 0; i < parts.size(); i += 2) {
      if (i + 1 == parts.size()) {
        halved.push_back(std::move(parts[i]));
        continue;
      }
      BoostRegion sum;
      bg::union_(parts[i], parts[i + 1], sum);
      halved.push_back(std::move(sum));
    }
    parts = std::move(halved);
  }
  return std::move(parts.front());
}

}  // namespace

double area_m2(const Polygon& polygon) { return bg::area(to_boost(polygon)); }

double area_m2(const Region& region) {
  double sum = 0;
  for (const Polygon& polygon : region) sum += area_m2(polygon);
  return sum;
}

SitePoint centroid(const Polygon& polygon) {
  if (polygon.outer.empty()) return {};
  if (polygon.outer.size() < 3) return between(polygon.outer.front(), polygon.outer.back(), 0.5);
  BoostPoint centre;
  bg::centroid(to_boost(polygon), centre);
  return {centre.x(), centre.y()};
}

Box box_of(const std::vector<SitePoint>& points) {
  if (points.empty()) return {};
  Box box{points.front(), points.front()};
  for (const SitePoint& p : points) {
    box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
    box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
  }
  return box;
}

double gap_m(const Box& a, const Box& b) {
  const double east = std::max({a.low.x - b.high.x, 0.0, b.low.x - a.high.x});
  const double north = std::max({a.low.y - b.high.y, 0.0, b.low.y - a.high.y});
  return std::sqrt(east * east + north * north);
}

Box grown(const Box& box, double by_m) {
  return {{box.low.x - by_m, box.low.y - by_m}, {box.high.x + by_m, box.high.y + by_m}};
}

bool contains(const Polygon& polygon, SitePoint point) {
  if (polygon.outer.size() < 3) return false;
  return bg::covered_by(BoostPoint{point.x, point.y}, to_boost(polygon));
}

bool contains(const Region& region, SitePoint point) {
  return std::ranges::any_of(region, [&](const Polygon& polygon) { return contains(polygon, point); });
}

Region united(const Region& parts) {
  std::vector<BoostRegion> singles;
  for (const Polygon& polygon : parts) singles.push_back({to_boost(polygon)});
  return from_boost(united_boost(std::move(singles)));
}

Region without(const Region& region, const Region& removed) {
  BoostRegion out;
  bg::difference(to_boost(region), to_boost(removed), out);
  return from_boost(out);
}

Region common(const Region& a, const Region& b) {
  BoostRegion out;
  bg::intersection(to_boost(a), to_boost(b), out);
  return from_boost(out);
}

Region offset(const Region& region, double by_m, int chords_per_turn) {
  if (by_m == 0) return united(region);
  const auto chords = static_cast<std::size_t>(chords_per_turn);
  BoostRegion out;
  bg::buffer(to_boost(region), out, bg::strategy::buffer::distance_symmetric<double>(by_m),
             bg::strategy::buffer::side_straight(), bg::strategy::buffer::join_round(chords),
             bg::strategy::buffer::end_round(chords), bg::strategy::buffer::point_circle(chords));
  return from_boost(out);
}

Region strip(const SitePath& path, double width_m) {
  BoostLine line;
  for (const SitePoint& p : path) line.emplace_back(p.x, p.y);
  if (line.size() < 2 || bg::length(line) <= 0 || width_m <= 0) return {};
  BoostRegion out;
  bg::buffer(line, out, bg::strategy::buffer::distance_symmetric<double>(width_m / 2),
             bg::strategy::buffer::side_straight(), bg::strategy::buffer::join_round(64),
             bg::strategy::buffer::end_flat(), bg::strategy::buffer::point_circle(64));
  return from_boost(out);
}

SitePath simplified(const SitePath& path, double off_m) {
  BoostLine line, fewer;
  for (const SitePoint& p : path) line.emplace_back(p.x, p.y);
  bg::simplify(line, fewer, off_m);
  SitePath out;
  for (const auto& p : fewer) out.push_back({p.x(), p.y()});
  return out;
}

Polygon disc(SitePoint centre, double radius_m, int corners) {
  Polygon out;
  for (int i = 0; i < corners; ++i) {
    const Angle turn = Angle::degrees(360.0 * i / corners);
    out.outer.push_back(centre + SiteVector{cos(turn), sin(turn)} * radius_m);
  }
  return out;
}

Polygon rectangle(const Pose& centre, double length_m, double width_m) {
  const SiteVector along = direction(centre.facing) * (length_m / 2);
  const SiteVector across = left_of(direction(centre.facing)) * (width_m / 2);
  return {
      {centre.at - along - across, centre.at + along - across, centre.at + along + across, centre.at - along + across},
      {}};
}

namespace {

SitePath closed(const std::vector<SitePoint>& ring) {
  SitePath path = ring;
  if (!path.empty()) path.push_back(path.front());
  return path;
}

/// Crossing point of two segments, where they cross.
bool crossing(SitePoint a, SitePoint b, SitePoint c, SitePoint d, SitePoint& at) {
  const SiteVector r = b - a, s = d - c;
  const double denominator = cross(r, s);
  if (denominator == 0) return false;
  const double t = cross(c - a, s) / denominator, u = cross(c - a, r) / denominator;
  if (t < 0 || t > 1 || u < 0 || u > 1) return false;
  at = a + r * t;
  return true;
}

void keep_nearer(NearestPair& best, SitePoint a, SitePoint b) {
  const double far_m = distance(a, b);
  if (far_m < best.distance_m) best = {a, b, far_m};
}

NearestPair nearest_of_paths(const SitePath& a, const SitePath& b) {
  NearestPair best{{}, {}, std::numeric_limits<double>::infinity()};
  for (const SitePoint& p : a) keep_nearer(best, p, nearest_on_path(b, p).point);
  for (const SitePoint& p : b) keep_nearer(best, nearest_on_path(a, p).point, p);
  if (best.distance_m == 0) return best;
  for (std::size_t i = 1; i < a.size(); ++i) {
    for (std::size_t j = 1; j < b.size(); ++j) {
      SitePoint at;
      if (crossing(a[i - 1], a[i], b[j - 1], b[j], at)) return {at, at, 0};
    }
  }
  return best;
}

}  // namespace

NearestPair nearest_pair(const Polygon& a, const Polygon& b) {
  if (!b.outer.empty() && contains(a, b.outer.front())) return {b.outer.front(), b.outer.front(), 0};
  if (!a.outer.empty() && contains(b, a.outer.front())) return {a.outer.front(), a.outer.front(), 0};
  return nearest_of_paths(closed(a.outer), closed(b.outer));
}

NearestPair nearest_pair(const Polygon& a, const SitePath& b) {
  if (!b.empty() && contains(a, b.front())) return {b.front(), b.front(), 0};
  return nearest_of_paths(closed(a.outer), b);
}

std::string what_is_wrong_with(const Polygon& polygon) {
  if (polygon.outer.size() < 3) return "has fewer than three corners";
  const BoostPolygon boosted = to_boost(polygon);
  if (bg::intersects(boosted)) return "crosses itself";
  bg::validity_failure_type failure{};
  if (bg::is_valid(boosted, failure)) return "";
  if (failure == bg::failure_few_points || failure == bg::failure_wrong_topological_dimension) return "has no area";
  if (failure == bg::failure_spikes) return "has a spike that runs back over itself";
  return "is not a simple area";
}

}  // namespace yardwright
