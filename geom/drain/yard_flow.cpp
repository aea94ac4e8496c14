#include "geom/drain/yard_flow.hpp"

#include <algorithm>
#include <limits>

#include "geom/drain/flow_after.hpp"
#include "geom/drain/raster.hpp"
#include "geom/drain/tile_lines.hpp"
#include "geom/ground/cells_along.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::drain {

namespace {

/// Higher than any ground around it; a roof then rises one to one from its edge, so that it sheds on all sides.
constexpr float wall_m = 50;

double inside_m(const Outline& outline, SitePoint point) {
  if (const Disc* disc = std::get_if<Disc>(&outline)) return disc->radius_m - distance(disc->centre, point);
  const auto& ring = std::get<Polygon>(outline).outer;
  double least_m = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < ring.size(); ++i) {
    least_m = std::min(least_m, nearest_on_segment(ring[i], ring[(i + 1) % ring.size()], point).distance_m);
  }
  return least_m;
}

std::vector<Link> culvert_links(const Site& site, const LevelGrid& levels) {
  std::vector<Link> links;
  for_each<Culvert>(site, [&](const Item&, const Culvert& culvert) {
    if (culvert.path.size() < 2) return;
    const Link link{pipe_mouth(levels, culvert.path.front()), pipe_mouth(levels, culvert.path.back())};
    if (link.from != outside && link.to != outside && link.from != link.to) links.push_back(link);
  });
  return links;
}

std::vector<Cell> cells_on(const GridFrame& frame, const SitePath& path) {
  std::vector<Cell> cells;
  cells_along(frame, path, [&](CellIndex cell) { cells.push_back(static_cast<Cell>(frame.offset(cell))); });
  std::ranges::sort(cells);
  cells.erase(std::ranges::unique(cells).begin(), cells.end());
  return cells;
}

/// Where a tile line lets its water out, or nothing where it is gone.
Cell outlet_cell(const Site& site, const LevelGrid& levels, const TileSystem& tiles, const TileRun& run) {
  if (run.end == TileEnd::line) return outlet_cell(site, levels, tiles, tiles.lines[run.line]);
  if (run.end == TileEnd::pit) return cell_at(levels.frame(), place_of(find(site, run.into)->thing));
  return run.end == TileEnd::ground ? pipe_mouth(levels, run.outlet) : outside;
}

/// Inlets as pipes through the surface, or as holes where their water is gone; receiving ditches as holes.
void add_tiles(FlowOptions& options, const Site& site, const DesignSurface& surface) {
  const TileSystem tiles = tile_system(site, surface);
  for (const TileInlet& inlet : tiles.inlets) {
    const Cell to = outlet_cell(site, surface.design, tiles, tiles.lines[inlet.line]);
    for (const Cell from : inlet_cells(surface.design, inlet.along)) {
      if (to == outside)
        options.sinks.push_back(from);
      else if (from != to)
        options.links.push_back({from, to});
    }
  }
  for_each<ReceivingDitch>(site, [&](const Item&, const ReceivingDitch& ditch) {
    const std::vector<Cell> cells = ditch_cells(surface.design.frame(), ditch);
    options.sinks.insert(options.sinks.end(), cells.begin(), cells.end());
  });
}

/// A curb stands on the ground under it, a retaining wall on the highest ground beside it.
void raise_edges(const Site& site, const LevelGrid& levels, std::vector<float>& raised_m) {
  const GridFrame& frame = levels.frame();
  for_each<Curb>(site, [&](const Item&, const Curb& curb) {
    for (const Cell cell : cells_on(frame, curb.path)) {
      const auto i = static_cast<std::size_t>(cell);
      raised_m[i] = std::max(raised_m[i], levels.values()[i] + static_cast<float>(curb.height_m));
    }
  });
  for_each<RetainingWall>(site, [&](const Item&, const RetainingWall& wall) {
    for (const Cell cell : cells_on(frame, wall.path)) {
      float& top_m = raised_m[static_cast<std::size_t>(cell)];
      for (const Cell beside : with_neighbours(frame, {&cell, 1}))
        top_m =
            std::max(top_m, levels.values()[static_cast<std::size_t>(beside)] + static_cast<float>(wall.freeboard_m));
    }
  });
}

}  // namespace

bool turns_water(const Item& item) {
  return as<Bin>(item) != nullptr || as<Dryer>(item) != nullptr || as<Building>(item) != nullptr;
}

LevelGrid with_walls(const Site& site, const LevelGrid& levels) {
  const GridFrame& frame = levels.frame();
  std::vector<float> raised_m = levels.values();
  raise_edges(site, levels, raised_m);
  for (const Item& item : site.items) {
    const auto outline = footprint(item.thing);
    if (!turns_water(item) || !outline) continue;
    for (const Cell cell : cells_in(frame, *outline)) {
      const auto offset = static_cast<std::size_t>(cell);
      raised_m[offset] += wall_m + static_cast<float>(inside_m(*outline, frame.centre(frame.cell_at_offset(offset))));
    }
  }
  return {frame, std::move(raised_m)};
}

Cell pipe_mouth(const LevelGrid& levels, SitePoint end) {
  const Cell cell = cell_at(levels.frame(), end);
  if (cell == outside) return outside;
  const std::vector<Cell> around = with_neighbours(levels.frame(), {&cell, 1});
  return *std::ranges::min_element(around, {}, [&](Cell c) { return levels.values()[static_cast<std::size_t>(c)]; });
}

std::vector<Cell> inlet_cells(const LevelGrid& levels, const SitePath& along) {
  std::vector<Cell> cells =
      along.size() > 1 ? cells_on(levels.frame(), along) : std::vector{pipe_mouth(levels, along.front())};
  std::erase(cells, outside);
  return cells;
}

std::vector<Cell> ditch_cells(const GridFrame& frame, const ReceivingDitch& ditch) {
  std::vector<Cell> cells = cells_on(frame, ditch.path);
  for (const Polygon& part : strip(ditch.path, ditch.width_m)) {
    const std::vector<Cell> more = cells_in(frame, part);
    cells.insert(cells.end(), more.begin(), more.end());
  }
  std::ranges::sort(cells);
  cells.erase(std::ranges::unique(cells).begin(), cells.end());
  return cells;
}

Flow yard_flow(const Site& site, const DesignSurface& surface, const Flow& before) {
  FlowOptions options{{}, culvert_links(site, surface.design)};
  add_tiles(options, site, surface);
  return flow_after(before, with_walls(site, surface.design), options);
}

}  // namespace yardwright::drain
