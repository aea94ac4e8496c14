#include "geom/drain/idle_drains.hpp"

#include <algorithm>

#include "geom/drain/yard_flow.hpp"

namespace yardwright::drain {

namespace {

/// An end that would stick out of the ground lies on it.
double invert_m(const DesignSurface& surface, Cell mouth, SitePoint end, double depth_m) {
  return std::min(surface.level_m(end) - depth_m,
                  static_cast<double>(surface.design.values()[static_cast<std::size_t>(mouth)]));
}

}  // namespace

std::string why_idle(const Culvert& culvert, const DesignSurface& surface) {
  if (culvert.path.size() < 2) return "it has no path";
  const SitePoint upper = culvert.path.front(), lower = culvert.path.back();
  const Cell start = pipe_mouth(surface.design, upper), end = pipe_mouth(surface.design, lower);
  if (start == outside || end == outside) return "an end of it lies outside the known ground";
  if (start == end) return "its two ends lie on one place";
  if (invert_m(surface, end, lower, culvert.end_depth_m) > invert_m(surface, start, upper, culvert.start_depth_m))
    return "it rises from its start to its end; draw it from its upper end to its lower";
  return "";
}

std::vector<LeftOut> idle_drains(const Site& site, const DesignSurface& surface, const TileSystem& tiles) {
  std::vector<LeftOut> idle = tiles.left_out;
  for_each<Culvert>(site, [&](const Item& item, const Culvert& culvert) {
    if (std::string why = why_idle(culvert, surface); !why.empty()) idle.push_back({item.id, std::move(why)});
  });
  for_each<Downspout>(site, [&](const Item& item, const Downspout& downspout) {
    if (std::ranges::find(idle, item.id, &LeftOut::item) != idle.end()) return;
    if (pipe_mouth(surface.design, downspout.at) == outside)
      idle.push_back({item.id, "its foot lies outside the known ground"});
  });
  return idle;
}

}  // namespace yardwright::drain
