#include "geom/shape/innermost.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <queue>

namespace yardwright {

namespace {

template <class Use>
void for_each_edge(const Region& region, Use use) {
  const auto around = [&](const std::vector<SitePoint>& ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) use(ring[i], ring[i + 1 < ring.size() ? i + 1 : 0]);
  };
  for (const Polygon& polygon : region) {
    around(polygon.outer);
    for (const auto& hole : polygon.holes) around(hole);
  }
}

/// Whether a ray east from the point crosses the edge.
bool passes_east_of(SitePoint from, SitePoint to, SitePoint point) {
  if ((from.y > point.y) == (to.y > point.y)) return false;
  return point.x < from.x + (to.x - from.x) * (point.y - from.y) / (to.y - from.y);
}

double square_to_segment_m2(SitePoint from, SitePoint to, SitePoint point) {
  const SiteVector along = to - from, out = point - from;
  const double long_m2 = dot(along, along);
  const double part = long_m2 > 0 ? std::clamp(dot(out, along) / long_m2, 0.0, 1.0) : 0.0;
  const SiteVector off = out - along * part;
  return dot(off, off);
}

struct Square {
  SitePoint centre;
  double half_m = 0;
  double depth_m = 0;
  double could_be_m() const { return depth_m + half_m * std::numbers::sqrt2; }
  bool operator<(const Square& other) const { return could_be_m() < other.could_be_m(); }
};

}  // namespace

NearestPair nearest_edge(const Region& region, SitePoint point) {
  NearestPair best{point, point, std::numeric_limits<double>::infinity()};
  for_each_edge(region, [&](SitePoint from, SitePoint to) {
    const Nearest near = nearest_on_segment(from, to, point);
    if (near.distance_m < best.distance_m) best = {point, near.point, near.distance_m};
  });
  return best;
}

bool holds(const Region& region, SitePoint point) {
  bool odd = false;
  for_each_edge(region, [&](SitePoint from, SitePoint to) { odd ^= passes_east_of(from, to, point); });
  return odd;
}

double depth_within_m(const Region& region, SitePoint point) {
  bool odd = false;
  double nearest_m2 = std::numeric_limits<double>::infinity();
  for_each_edge(region, [&](SitePoint from, SitePoint to) {
    odd ^= passes_east_of(from, to, point);
    nearest_m2 = std::min(nearest_m2, square_to_segment_m2(from, to, point));
  });
  return (odd ? 1 : -1) * std::sqrt(nearest_m2);
}

std::optional<Innermost> innermost(const Region& region, double off_m) {
  if (region.empty()) return std::nullopt;
  Box box = box_of(region.front().outer);
  for (const Polygon& polygon : region) {
    const Box one = box_of(polygon.outer);
    box = {{std::min(box.low.x, one.low.x), std::min(box.low.y, one.low.y)},
           {std::max(box.high.x, one.high.x), std::max(box.high.y, one.high.y)}};
  }
  constexpr int squares_along = 8;
  const double half_m = std::max(box.high.x - box.low.x, box.high.y - box.low.y) / squares_along / 2;
  const auto square = [&](SitePoint centre, double half) {
    return Square{centre, half, depth_within_m(region, centre)};
  };
  std::priority_queue<Square> left;
  for (double north = box.low.y; north < box.high.y; north += 2 * half_m) {
    for (double east = box.low.x; east < box.high.x; east += 2 * half_m)
      left.push(square({east + half_m, north + half_m}, half_m));
  }
  std::optional<Innermost> best;
  while (!left.empty()) {
    const Square one = left.top();
    left.pop();
    if (one.depth_m > 0 && (!best || one.depth_m > best->depth_m)) best = {one.centre, one.depth_m};
    if (one.could_be_m() <= (best ? best->depth_m : 0) + off_m) break;
    for (const double x : {-one.half_m / 2, one.half_m / 2}) {
      for (const double y : {-one.half_m / 2, one.half_m / 2})
        left.push(square(one.centre + SiteVector{x, y}, one.half_m / 2));
    }
  }
  return best;
}

}  // namespace yardwright
