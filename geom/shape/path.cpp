#include "geom/shape/path.hpp"

#include <algorithm>
#include <limits>

namespace yardwright {

double length(const SitePath& path) {
  double sum = 0;
  for (std::size_t i = 1; i < path.size(); ++i) sum += distance(path[i - 1], path[i]);
  return sum;
}

Pose pose_at(const SitePath& path, double station_m) {
  if (path.empty()) return {};
  if (path.size() == 1) return {path.front(), {}};
  for (std::size_t i = 1; i < path.size(); ++i) {
    const double leg_m = distance(path[i - 1], path[i]);
    const bool last = i + 1 == path.size();
    if (station_m > leg_m && !last) {
      station_m -= leg_m;
      continue;
    }
    const double part = leg_m > 0 ? std::clamp(station_m / leg_m, 0.0, 1.0) : 0.0;
    return {between(path[i - 1], path[i], part), bearing_of(path[i] - path[i - 1])};
  }
  return {};
}

Nearest nearest_on_segment(SitePoint from, SitePoint to, SitePoint point) {
  const SiteVector along = to - from;
  const double size2 = dot(along, along);
  const double part = size2 > 0 ? std::clamp(dot(point - from, along) / size2, 0.0, 1.0) : 0.0;
  const SitePoint at = part == 1.0 ? to : from + along * part;
  return {at, distance(at, point), part * std::sqrt(size2)};
}

Nearest nearest_on_path(const SitePath& path, SitePoint point) {
  Nearest best{{}, std::numeric_limits<double>::infinity(), 0};
  if (path.size() == 1) return {path.front(), distance(path.front(), point), 0};
  double before_m = 0;
  for (std::size_t i = 1; i < path.size(); ++i) {
    Nearest here = nearest_on_segment(path[i - 1], path[i], point);
    here.station_m += before_m;
    if (here.distance_m < best.distance_m) best = here;
    before_m += distance(path[i - 1], path[i]);
  }
  return best;
}

namespace {

void append_fillet(SitePath& out, SitePoint before, SitePoint corner, SitePoint after, double radius_m, double step_m) {
  const SiteVector in = unit(corner - before), leave = unit(after - corner);
  const double turn = std::atan2(cross(in, leave), dot(in, leave));
  const double half_tangent = std::tan(std::abs(turn) / 2);
  const double room_m = std::min(distance(before, corner), distance(corner, after)) / 2;
  const double radius = half_tangent > 0 ? std::min(radius_m, room_m / half_tangent) : 0.0;
  if (radius <= 0 || std::abs(turn) < 1e-9) {
    out.push_back(corner);
    return;
  }
  const SitePoint start = corner - in * (radius * half_tangent);
  const SiteVector to_centre = (turn > 0 ? left_of(in) : right_of(in)) * radius;
  const SitePoint centre = start + to_centre;
  const int chords = std::max(2, static_cast<int>(std::ceil(radius * std::abs(turn) / step_m)));
  for (int i = 0; i <= chords; ++i) {
    out.push_back(turned(start, centre, Angle::radians(-turn * i / chords)));
  }
}

}  // namespace

SitePath with_fillets(const SitePath& path, double radius_m, double step_m) {
  if (path.size() < 3 || radius_m <= 0) return path;
  SitePath out{path.front()};
  for (std::size_t i = 1; i + 1 < path.size(); ++i) {
    append_fillet(out, path[i - 1], path[i], path[i + 1], radius_m, step_m);
  }
  out.push_back(path.back());
  return out;
}

}  // namespace yardwright
