// The drawn channels, by the cells that water runs in them: a swale as far up as its banks reach. Of the design surface.
#pragma once

#include <cstdint>
#include <vector>

#include "geom/drain/channel.hpp"
#include "geom/drain/flow.hpp"
#include "geom/ground/design_surface.hpp"
#include "geom/site/site.hpp"

namespace yardwright::drain {

struct DrawnChannel {
  double bottom_width_m = 0;
  double side_slope_ratio = 0;
  double full_depth_m = 0;    ///< halfway along
  double roughness_n = 0.03;  ///< earth with short grass, as HEC-22 example 6.1 takes it

  /// Full to its banks, on a slope.
  double speed_m_per_s(double slope_ratio) const;
  bool operator==(const DrawnChannel&) const = default;
};

struct ChannelMap {
  std::vector<DrawnChannel> channels;
  std::vector<std::int32_t>
      of_cell;  ///< place in `channels`, less than 0 where there is none; empty where none is drawn

  std::int32_t at(Cell cell) const { return of_cell.empty() ? -1 : of_cell[static_cast<std::size_t>(cell)]; }
};

ChannelMap channel_map(const Site& site, const DesignSurface& surface);

}  // namespace yardwright::drain
