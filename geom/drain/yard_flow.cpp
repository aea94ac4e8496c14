#include "geom/drain/yard_flow.hpp"

#include <algorithm>
#include <limits>

#include "geom/drain/raster.hpp"
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

}  // namespace

bool turns_water(const Item& item) {
  return as<Bin>(item) != nullptr || as<Dryer>(item) != nullptr || as<Building>(item) != nullptr;
}

LevelGrid with_walls(const Site& site, const LevelGrid& levels) {
  const GridFrame& frame = levels.frame();
  std::vector<float> raised_m = levels.values();
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

Flow yard_flow(const Site& site, const DesignSurface& surface) {
  return flow_over(with_walls(site, surface.design), {{}, culvert_links(site, surface.design)});
}

}  // namespace yardwright::drain
