#include "geom/drain/open_ground.hpp"

#include <algorithm>

#include "geom/site/footprint.hpp"

namespace yardwright::drain {

namespace {

constexpr double half_truck_m = 8.5 * 0.3048 / 2;  // the legal width of a truck, 8.5 ft (23 CFR 658.15, from memory)

bool lies_in(const Box& box, SitePoint at) {
  return at.x >= box.low.x && at.y >= box.low.y && at.x <= box.high.x && at.y <= box.high.y;
}

}  // namespace

OpenGround::OpenGround(const Site& site, const GridFrame& ground) : lot_{site.lot.corners, {}} {
  const SiteVector extent{ground.columns * ground.cell_m, ground.rows * ground.cell_m};
  known_ = grown({ground.south_west, ground.south_west + extent}, -ground.cell_m);
  for (const Item& item : site.items) keep_off(item.thing);
}

void OpenGround::keep_off(const Thing& thing) {
  if (auto outline = footprint(thing)) standing_.push_back(std::move(*outline));
  if (auto hole = pit_hole(thing)) standing_.push_back(std::move(*hole));
  if (const auto* drive = std::get_if<Drive>(&thing)) driven_.push_back({drive->path, drive->width_m / 2});
  if (const auto* route = std::get_if<Route>(&thing)) driven_.push_back({route->path, half_truck_m});
}

bool OpenGround::holds(SitePoint at, double clear_m) const {
  const auto stands_near = [&](const Outline& one) { return nearest_pair(one, SitePath{at}).distance_m < clear_m; };
  const auto drives_near = [&](const DrivenWay& way) {
    return !way.path.empty() && nearest_on_path(way.path, at).distance_m < way.half_width_m + clear_m;
  };
  return lies_in(known_, at) && is_on_lot(at) && std::ranges::none_of(standing_, stands_near) &&
         std::ranges::none_of(driven_, drives_near);
}

}  // namespace yardwright::drain
