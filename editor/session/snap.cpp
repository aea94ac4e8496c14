#include "editor/session/snap.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "geom/site/footprint.hpp"

namespace yardwright::session {

namespace {

constexpr double metres_per_foot = 0.3048;

/// Keeps the nearest of the points that it is shown.
struct NearestPoint {
  SitePoint to;
  double within_m;
  std::optional<SitePoint> found;

  void consider(SitePoint point) {
    const double away_m = distance(point, to);
    if (away_m > within_m) return;
    within_m = away_m;
    found = point;
  }
};

/// Shows `use` every line of the site: the lot's edges and every item's path.
template <class Use>
void for_each_line(const Site& site, const SnapOptions& options, Use use) {
  if (options.to_lot && !site.lot.corners.empty()) {
    SitePath ring = site.lot.corners;
    ring.push_back(ring.front());
    use(ring);
  }
  for (const Item& item : site.items) {
    const SitePath* path = path_of(item.thing);
    if (path != nullptr && !path->empty() && std::ranges::find(options.but, item.id) == options.but.end()) use(*path);
  }
}

std::optional<SitePoint> nearest_corner(const Site& site, SitePoint point, const SnapOptions& options) {
  NearestPoint nearest{point, options.radius_m, {}};
  for_each_line(site, options, [&](const SitePath& line) {
    for (const SitePoint corner : line) nearest.consider(corner);
  });
  return nearest.found;
}

std::optional<SitePoint> nearest_centre(const Site& site, SitePoint point, const SnapOptions& options) {
  NearestPoint nearest{point, options.radius_m, {}};
  for (const Item& item : site.items) {
    if (as<Spout>(item) != nullptr || as<Picture>(item) != nullptr || path_of(item.thing) != nullptr) continue;
    if (std::ranges::find(options.but, item.id) == options.but.end()) nearest.consider(place_of(item.thing));
  }
  return nearest.found;
}

std::optional<SitePoint> nearest_line(const Site& site, SitePoint point, const SnapOptions& options) {
  NearestPoint nearest{point, options.radius_m / 2, {}};
  for_each_line(site, options, [&](const SitePath& line) {
    if (line.size() > 1) nearest.consider(nearest_on_path(line, point).point);
  });
  return nearest.found;
}

double on_grid(double value, double step) { return std::round(value / step) * step; }

}  // namespace

Snapped snapped(const Site& site, SitePoint point, const SnapOptions& options) {
  if (const auto corner = nearest_corner(site, point, options)) return {*corner, SnapTo::corner};
  if (const auto centre = nearest_centre(site, point, options)) return {*centre, SnapTo::centre};
  if (const auto line = nearest_line(site, point, options)) return {*line, SnapTo::line};
  if (options.grid_m <= 0) return {point, SnapTo::nothing};
  return {{on_grid(point.x, options.grid_m), on_grid(point.y, options.grid_m)}, SnapTo::grid};
}

double round_up_to_step(double value) {
  const double power = std::pow(10, std::floor(std::log10(value)));
  for (const double step : {1.0, 2.0, 5.0}) {
    if (value <= step * power * (1 + 1e-9)) return step * power;
  }
  return 10 * power;
}

double grid_step_m(UnitSystem units, double px_per_m, double least_px) {
  const double least_m = least_px / px_per_m;
  if (units == UnitSystem::us) return std::max(1.0, round_up_to_step(least_m / metres_per_foot)) * metres_per_foot;
  return std::max(0.1, round_up_to_step(least_m));
}

}  // namespace yardwright::session
