// Pipes and inlets that carry nothing though they are drawn, and why: what they would do is not counted.
#pragma once

#include "geom/drain/tile_lines.hpp"

namespace yardwright::drain {

/// Why a culvert carries no water; empty where it does.
std::string why_idle(const Culvert& culvert, const DesignSurface& surface);

std::vector<LeftOut> idle_drains(const Site& site, const DesignSurface& surface, const TileSystem& tiles);

}  // namespace yardwright::drain
