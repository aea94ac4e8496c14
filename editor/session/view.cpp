#include "editor/session/view.hpp"

#include <algorithm>

#include "editor/session/pick.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::session {

namespace {

constexpr double least_px_per_m = 0.05, most_px_per_m = 400;

std::vector<SitePoint> corners(const Box& box) { return {box.low, box.high}; }

void add_item(std::vector<SitePoint>& points, const Site& site, const Item& item) {
  for (const SitePoint point : outline_points(site, item)) points.push_back(point);
}

}  // namespace

ScreenPoint to_screen(const View& view, SitePoint point) {
  const SiteVector from_centre = point - view.centre;
  return view.middle() + ScreenVector{from_centre.x * view.px_per_m, -from_centre.y * view.px_per_m};
}

SitePoint to_site(const View& view, ScreenPoint point) {
  const ScreenVector from_middle = point - view.middle();
  return view.centre + SiteVector{from_middle.x / view.px_per_m, -from_middle.y / view.px_per_m};
}

View panned(View view, ScreenVector by) {
  view.centre = view.centre + SiteVector{-by.x / view.px_per_m, by.y / view.px_per_m};
  return view;
}

View zoomed(View view, ScreenPoint pointer, double factor) {
  const SitePoint before = to_site(view, pointer);
  view.px_per_m = std::clamp(view.px_per_m * factor, least_px_per_m, most_px_per_m);
  view.centre = view.centre + (before - to_site(view, pointer));
  return view;
}

View fitted(View view, const Box& box) {
  const SiteVector size = box.high - box.low;
  const double across = view.width_px / std::max(size.x, 1.0), up = view.height_px / std::max(size.y, 1.0);
  view.px_per_m = std::clamp(std::min(across, up) * 5 / 6, least_px_per_m, most_px_per_m);
  view.centre = between(box.low, box.high, 0.5);
  return view;
}

Box bounds_of(const Site& site) {
  std::vector<SitePoint> points = site.lot.corners;
  for (const Item& item : site.items) {
    if (as<Picture>(item) == nullptr) add_item(points, site, item);
  }
  if (points.empty()) return {{-50, -50}, {50, 50}};
  return box_of(points);
}

Box bounds_of(const Site& site, const std::vector<ItemId>& items) {
  std::vector<SitePoint> points;
  for (const ItemId id : items) {
    if (const Item* item = find(site, id)) add_item(points, site, *item);
  }
  if (points.empty()) return bounds_of(site);
  const Box tight = box_of(points);
  const SiteVector size = tight.high - tight.low;
  return box_of(corners(grown(tight, 5 + std::max(size.x, size.y) / 2)));
}

}  // namespace yardwright::session
