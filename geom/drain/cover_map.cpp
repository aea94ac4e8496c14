#include "geom/drain/cover_map.hpp"

#include <algorithm>
#include <array>
#include <functional>
#include <optional>

#include "geom/drain/raster.hpp"
#include "geom/drain/yard_flow.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::drain {

namespace {

class Painter {
 public:
  Painter(const Catalogs& catalogs, const GridFrame& frame) : catalogs_{catalogs}, frame_{frame} {}

  /// The number of a cover, or nothing where the catalogue lacks it or the map has no number left.
  std::optional<std::uint8_t> number_of(const std::string& name, SoilGroup soil) {
    const GroundCover* cover = find(catalogs_.covers, name);
    if (cover == nullptr || map.covers.size() >= 255) {
      map.unknown.push_back(name);
      return std::nullopt;
    }
    const bool paved = name == "paved" || name == "roofs";
    map.covers.push_back({cover->curve_number[static_cast<std::size_t>(soil)], cover->rational_c, cover->sheet_n, paved,
                          cover->name, soil});
    return static_cast<std::uint8_t>(map.covers.size() - 1);
  }

  void paint(const Region& areas, std::optional<std::uint8_t> number) {
    if (!number) return;
    for (const Polygon& area : areas) {
      for (const Cell cell : cells_in(frame_, area)) map.of_cell[static_cast<std::size_t>(cell)] = *number;
    }
  }

  CoverMap map;

 private:
  const Catalogs& catalogs_;
  const GridFrame& frame_;
};

constexpr std::array<const char*, 3> cover_of_surface{"gravel", "paved", "dirt-road"};

void paint_drives(Painter& painter, const Site& site) {
  for (std::size_t surface = 0; surface < cover_of_surface.size(); ++surface) {
    Region strips;
    for_each<Drive>(site, [&](const Item&, const Drive& drive) {
      if (static_cast<std::size_t>(drive.surface) != surface || drive.path.size() < 2) return;
      for (Polygon& part : strip(drive.path, drive.width_m)) strips.push_back(std::move(part));
    });
    if (!strips.empty()) painter.paint(strips, painter.number_of(cover_of_surface[surface], site.storm.soil));
  }
}

void paint_roofs(Painter& painter, const Site& site) {
  Region roofs;
  for (const Item& item : site.items) {
    if (const auto outline = footprint(item.thing); outline && turns_water(item)) roofs.push_back(as_polygon(*outline));
  }
  if (roofs.empty()) return;
  const auto number = painter.number_of("roofs", site.storm.soil);
  if (number) painter.map.covers[*number].roof = true;
  painter.paint(roofs, number);
}

}  // namespace

CoverMap cover_map(const Site& site, const Catalogs& catalogs, const GridFrame& frame) {
  Painter painter{catalogs, frame};
  if (!painter.number_of(site.storm.cover, site.storm.soil)) return std::move(painter.map);
  painter.map.of_cell.assign(frame.cells(), 0);
  paint_drives(painter, site);
  for_each<Cover>(site, [&](const Item&, const Cover& cover) {
    painter.paint({Polygon{cover.outline, {}}}, painter.number_of(cover.cover, cover.soil));
  });
  paint_roofs(painter, site);
  return std::move(painter.map);
}

std::vector<CoverPart> cover_parts(const CoverMap& map, const GridFrame& frame, std::span<const Cell> cells) {
  std::vector<std::size_t> count(map.covers.size(), 0);
  for (const Cell cell : cells) ++count[map.of_cell[static_cast<std::size_t>(cell)]];
  std::vector<CoverPart> parts;
  for (std::size_t i = 0; i < count.size(); ++i) {
    if (count[i] == 0) continue;
    const CellCover& cover = map.covers[i];
    const auto same = std::ranges::find_if(
        parts, [&](const CoverPart& part) { return part.cover == cover.name && part.soil == cover.soil; });
    const double area_m2 = static_cast<double>(count[i]) * frame.cell_area_m2();
    if (same == parts.end())
      parts.push_back({area_m2, cover.curve_number, cover.rational_c, cover.name, cover.soil});
    else
      same->area_m2 += area_m2;
  }
  std::ranges::stable_sort(parts, std::greater{}, &CoverPart::area_m2);
  return parts;
}

}  // namespace yardwright::drain
