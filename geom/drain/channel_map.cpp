#include "geom/drain/channel_map.hpp"

#include <algorithm>

#include "geom/drain/raster.hpp"
#include "geom/ground/cells_along.hpp"
#include "geom/shape/path.hpp"

namespace yardwright::drain {

namespace {

constexpr double shallowest_m = 0.02;

void mark(ChannelMap& map, const GridFrame& frame, const Swale& swale) {
  const auto number = static_cast<std::int32_t>(map.channels.size()) - 1;
  const auto put = [&](std::size_t offset) { map.of_cell[offset] = number; };
  for (const Polygon& part : strip(swale.path, swale.bottom_width_m)) {
    for (const Cell cell : cells_in(frame, part)) put(static_cast<std::size_t>(cell));
  }
  cells_along(frame, swale.path, [&](CellIndex cell) { put(frame.offset(cell)); });
}

}  // namespace

double DrawnChannel::speed_m_per_s(double slope_ratio) const {
  return flow_at_depth(Channel{bottom_width_m, side_slope_ratio, slope_ratio, roughness_n}, full_depth_m).speed_m_per_s;
}

ChannelMap channel_map(const Site& site, const DesignSurface& surface) {
  ChannelMap map;
  const GridFrame& frame = surface.design.frame();
  for_each<Swale>(site, [&](const Item&, const Swale& swale) {
    if (swale.path.size() < 2 || length(swale.path) <= 0) return;
    const SitePoint middle = pose_at(swale.path, length(swale.path) / 2).at;
    const double depth_m = surface.existing_level_m(middle) - surface.level_m(middle);
    if (depth_m < shallowest_m) return;
    if (map.of_cell.empty()) map.of_cell.assign(frame.cells(), -1);
    map.channels.push_back({swale.bottom_width_m, swale.side_slope_ratio, depth_m});
    mark(map, frame, swale);
  });
  return map;
}

}  // namespace yardwright::drain
