#include "geom/turn/box_distance.hpp"

#include <algorithm>
#include <limits>
#include <optional>

namespace yardwright::turn {

namespace {

using Local = SiteVector;  // in the box's frame: x ahead, y to its left, from its centre

Local to_local(const PlacedBox& box, SitePoint p) {
  const SiteVector v = p - box.centre;
  return {dot(v, box.ahead), cross(box.ahead, v)};
}

SitePoint to_site(const PlacedBox& box, Local p) { return box.centre + box.ahead * p.x + left_of(box.ahead) * p.y; }

Local nearest_in_box(const PlacedBox& box, Local p) {
  return {std::clamp(p.x, -box.half_length_m, box.half_length_m), std::clamp(p.y, -box.half_width_m, box.half_width_m)};
}

Local nearest_on_segment(Local from, Local to, Local point) {
  const Local along = to - from;
  const double size2 = dot(along, along);
  const double part = size2 > 0 ? std::clamp(dot(point - from, along) / size2, 0.0, 1.0) : 0.0;
  return from + along * part;
}

struct LocalPair {
  Local on_box, other;
  double squared = std::numeric_limits<double>::infinity();
};

void keep_nearer(LocalPair& best, Local on_box, Local other) {
  const Local apart = other - on_box;
  if (const double squared = dot(apart, apart); squared < best.squared) best = {on_box, other, squared};
}

/// Narrows the part [first, last] of a segment to where it lies within a slab; false where it misses.
bool clip(double from, double along, double half, double& first, double& last) {
  if (along == 0) return std::abs(from) <= half;
  const double enter = (-half - from) / along, leave = (half - from) / along;
  first = std::max(first, std::min(enter, leave));
  last = std::min(last, std::max(enter, leave));
  return first <= last;
}

std::optional<Local> meeting_point(const PlacedBox& box, Local from, Local to) {
  const Local along = to - from;
  double first = 0, last = 1;
  if (!clip(from.x, along.x, box.half_length_m, first, last)) return std::nullopt;
  if (!clip(from.y, along.y, box.half_width_m, first, last)) return std::nullopt;
  return from + along * ((first + last) / 2);
}

void keep_nearer_of_segment(LocalPair& best, const PlacedBox& box, Local from, Local to) {
  if (const auto meet = meeting_point(box, from, to)) {
    best = {*meet, *meet, 0};
    return;
  }
  keep_nearer(best, nearest_in_box(box, from), from);
  keep_nearer(best, nearest_in_box(box, to), to);
  const double x = box.half_length_m, y = box.half_width_m;
  for (const Local corner : {Local{x, y}, Local{x, -y}, Local{-x, y}, Local{-x, -y}}) {
    keep_nearer(best, corner, nearest_on_segment(from, to, corner));
  }
}

/// Whether the ring goes around the box's centre: crossings of the ray ahead of it.
bool surrounds_centre(const PlacedBox& box, const std::vector<SitePoint>& ring) {
  bool inside = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
    const Local a = to_local(box, ring[j]), b = to_local(box, ring[i]);
    if ((a.y > 0) != (b.y > 0) && a.x + (b.x - a.x) * a.y / (a.y - b.y) > 0) inside = !inside;
  }
  return inside;
}

NearestPair in_site(const PlacedBox& box, const LocalPair& pair) {
  return {to_site(box, pair.on_box), to_site(box, pair.other), std::sqrt(pair.squared)};
}

}  // namespace

PlacedBox placed(const Body& body, const UnitPose& pose) {
  return {pose.axle + pose.ahead * ((body.front_m + body.rear_m) / 2), pose.ahead, (body.front_m - body.rear_m) / 2,
          body.width_m / 2};
}

NearestPair nearest_pair(const PlacedBox& box, const Disc& disc) {
  const SitePoint on_box = to_site(box, nearest_in_box(box, to_local(box, disc.centre)));
  const double far_m = distance(on_box, disc.centre);
  if (far_m <= disc.radius_m) return {on_box, on_box, 0};
  return {on_box, disc.centre + (on_box - disc.centre) * (disc.radius_m / far_m), far_m - disc.radius_m};
}

NearestPair nearest_pair(const PlacedBox& box, const std::vector<SitePoint>& ring) {
  if (ring.empty()) return {{}, {}, std::numeric_limits<double>::infinity()};
  if (surrounds_centre(box, ring)) return {box.centre, box.centre, 0};
  LocalPair best;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size() && best.squared > 0; j = i++) {
    keep_nearer_of_segment(best, box, to_local(box, ring[j]), to_local(box, ring[i]));
  }
  return in_site(box, best);
}

NearestPair nearest_pair_to_line(const PlacedBox& box, const SitePath& line) {
  LocalPair best;
  if (line.size() == 1) keep_nearer_of_segment(best, box, to_local(box, line[0]), to_local(box, line[0]));
  for (std::size_t i = 1; i < line.size() && best.squared > 0; ++i) {
    keep_nearer_of_segment(best, box, to_local(box, line[i - 1]), to_local(box, line[i]));
  }
  return in_site(box, best);
}

}  // namespace yardwright::turn
