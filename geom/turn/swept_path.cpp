#include "geom/turn/swept_path.hpp"

#include <algorithm>
#include <array>

namespace yardwright::turn {

namespace {

/// Convex hull, counter-clockwise, by Andrew's monotone chain.
Polygon hull(std::vector<SitePoint> points) {
  std::ranges::sort(points, [](SitePoint a, SitePoint b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
  std::vector<SitePoint> ring;
  for (int side = 0; side < 2; ++side) {
    const std::size_t first = ring.size();
    for (const SitePoint& p : points) {
      while (ring.size() >= first + 2 && cross(ring.back() - ring[ring.size() - 2], p - ring.back()) <= 0)
        ring.pop_back();
      ring.push_back(p);
    }
    ring.pop_back();
    std::ranges::reverse(points);
  }
  return {std::move(ring), {}};
}

/// The body ahead of its axle and behind it. One that reaches only to one side stays whole.
std::vector<Body> halves(const Body& body) {
  if (body.rear_m >= 0 || body.front_m <= 0) return {body};
  return {{body.unit, body.front_m, 0, body.width_m}, {body.unit, 0, body.rear_m, body.width_m}};
}

double off_chord_m(SitePoint from, SitePoint to, SitePoint point) {
  return nearest_on_segment(from, to, point).distance_m;
}

/// Whether the hull of two stations' boxes strays from what is swept between them by no more than the tolerance:
/// corners leave their chords little, and the side lines meet near the axle.
bool near_enough(const Driven& driven, const Body& half, std::size_t from, std::size_t to, double tolerance_m) {
  const UnitPose &first = driven.pose(from, half.unit), &last = driven.pose(to, half.unit);
  const double turned = std::abs(cross(first.ahead, last.ahead));
  if (dot(first.ahead, last.ahead) < 0.5 || distance(first.axle, last.axle) * turned / 2 > tolerance_m) return false;
  const auto a = corners(half, first), b = corners(half, last);
  for (const std::size_t station : {from + (to - from) / 4, from + (to - from) / 2, from + (to - from) * 3 / 4}) {
    const auto now = corners(half, driven.pose(station, half.unit));
    for (std::size_t i = 0; i < now.size(); ++i) {
      if (off_chord_m(a[i], b[i], now[i]) > tolerance_m) return false;
    }
  }
  return true;
}

/// The stations between which one hull will do, from `from` on.
std::size_t farthest(const Driven& driven, const Body& half, std::size_t from, double tolerance_m) {
  std::size_t to = from + 1;
  while (to + 1 < driven.stations() && near_enough(driven, half, from, to + 1, tolerance_m)) ++to;
  return to;
}

void append_hulls(Region& hulls, const Driven& driven, const Body& half, double tolerance_m) {
  for (std::size_t from = 0, to = 0; from + 1 < driven.stations(); from = to) {
    to = farthest(driven, half, from, tolerance_m);
    const auto a = corners(half, driven.pose(from, half.unit)), b = corners(half, driven.pose(to, half.unit));
    std::vector<SitePoint> points{a.begin(), a.end()};
    points.insert(points.end(), b.begin(), b.end());
    hulls.push_back(hull(std::move(points)));
  }
}

}  // namespace

Region swept_area(const Driven& driven, const std::vector<Body>& bodies, double tolerance_m) {
  Region hulls;
  for (const Body& body : bodies) {
    for (const Body& half : halves(body)) append_hulls(hulls, driven, half, tolerance_m);
  }
  return united(hulls);
}

}  // namespace yardwright::turn
