#include "geom/drain/pipe_catchments.hpp"

#include <algorithm>

#include "geom/drain/idle_drains.hpp"
#include "geom/drain/tile_lines.hpp"
#include "geom/drain/yard_flow.hpp"

namespace yardwright::drain {

namespace {

/// Where an item takes water in; nowhere for one that takes none.
std::vector<Cell> cells_taken_by(const Item& item, const DesignSurface& surface, const TileSystem& tiles,
                                 const LevelGrid& levels) {
  if (const auto* culvert = std::get_if<Culvert>(&item.thing)) {
    if (!why_idle(*culvert, surface).empty()) return {};
    return {pipe_mouth(surface.design, culvert->path.front())};
  }
  const auto inlet = std::ranges::find(tiles.inlets, item.id, &TileInlet::item);
  return inlet == tiles.inlets.end() ? std::vector<Cell>{} : inlet_cells(levels, inlet->along);
}

}  // namespace

std::vector<PipeCatchment> pipe_catchments(const Site& site, const DesignSurface& surface, const Catalogs& catalogs,
                                           const Flow& flow) {
  if (flow.receiver.empty()) return {};
  const CoverMap covers = cover_map(site, catalogs, flow.frame);
  if (covers.covers.empty()) return {};
  const ChannelMap channels = channel_map(site, surface);
  const TileSystem tiles = tile_system(site, surface);
  const LevelGrid levels{flow.frame, flow.level_m};
  std::vector<PipeCatchment> found;
  for (const Item& item : site.items) {
    const std::vector<Cell> taken = cells_taken_by(item, surface, tiles, levels);
    if (taken.empty()) continue;
    found.push_back(
        {item.id, catchment_water(flow, covers, channels, catchment(flow, taken), taken, site.storm.two_year_rain_m)});
  }
  return found;
}

}  // namespace yardwright::drain
