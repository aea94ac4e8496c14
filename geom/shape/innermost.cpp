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

double depth_within_m(const Region& region, SitePoint point) {
  bool odd = false;
  double nearest_m = std::numeric_limits<double>::infinity();
  for_each_edge(region, [&](SitePoint from, SitePoint to) {
    nearest_m = std::min(nearest_m, nearest_on_segment(from, to, point).distance_m);
    if ((from.y > point.y) == (to.y > point.y)) return;
    if (point.x < from.x + (to.x - from.x) * (point.y - from.y) / (to.y - from.y)) odd = !odd;
  });
  return odd ? nearest_m : -nearest_m;
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
