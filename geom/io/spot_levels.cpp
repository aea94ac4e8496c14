// Turns a list of spot levels into a surface: Delaunay triangles, linear over each, through GDAL and Qhull.
#include <fmt/format.h>
#include <gdal_alg.h>
#include <ogr_spatialref.h>

#include <algorithm>
#include <cmath>
#include <memory>

#include "geom/io/gdal_handles.hpp"
#include "geom/io/level_source.hpp"
#include "geom/io/spot_list.hpp"
#include "geom/io/whole_file.hpp"

namespace yardwright {

namespace {

constexpr std::size_t most_list_bytes = 64u << 20;

struct CloseTriangulation {
  void operator()(GDALTriangulation* triangles) const { GDALTriangulationFree(triangles); }
};

/// Spots in metres, taken from their middle so that Qhull meets small numbers.
struct SpotSurface {
  EarthPoint middle;
  std::vector<double> x_m, y_m, level_m;
  std::unique_ptr<GDALTriangulation, CloseTriangulation> triangles;
};

MapUnit usual_unit(const Site& site) { return site.units == UnitSystem::us ? MapUnit::foot : MapUnit::metre; }

/// Spots at one place: the same level twice is said and dropped, two levels are a problem.
Problems drop_repeats(std::vector<Spot>& spots, const std::string& where, std::vector<std::string>& notes) {
  std::ranges::stable_sort(spots, [](const Spot& a, const Spot& b) {
    return std::pair{a.x, a.y} < std::pair{b.x, b.y};
  });
  Problems problems;
  std::vector<Spot> kept;
  for (const Spot& spot : spots) {
    const bool repeats = !kept.empty() && kept.back().x == spot.x && kept.back().y == spot.y;
    if (!repeats)
      kept.push_back(spot);
    else if (kept.back().level != spot.level)
      problems.push_back({fmt::format("is at the place of line {} with another level", kept.back().line),
                          fmt::format("{}, line {}", where, spot.line), "keep one of the two"});
  }
  if (kept.size() < spots.size()) notes.push_back(fmt::format("{} spots were given twice", spots.size() - kept.size()));
  spots = std::move(kept);
  return problems;
}

/// The unit of the plan and of the levels: as asked, else as the site's own; said either way.
struct SpotUnits {
  double plan_m = 1, level_m = 1;
};

SpotUnits units_for(const Site& site, const ImportOptions& options, std::vector<std::string>& notes) {
  const MapUnit plan = options.plan_unit.value_or(usual_unit(site));
  const MapUnit level = options.vertical_unit.value_or(plan);
  const auto word = [](MapUnit unit) { return names_of(unit)[static_cast<std::size_t>(unit)]; };
  notes.push_back(fmt::format("x and y are taken in {}, levels in {}",
                              options.epsg != 0 ? "the coordinate system's unit" : word(plan), word(level)));
  return {options.epsg != 0 ? 1.0 : metres_in(plan), metres_in(level)};
}

/// Into the metres of the system that the site lies in, else of the list's own system.
bool reproject(std::vector<Spot>& spots, const Site& site, int epsg, LevelSource& out) {
  OGRSpatialReference own, target;
  out.epsg = site.tie.epsg != 0 ? site.tie.epsg : epsg;
  if (own.importFromEPSG(epsg) != OGRERR_NONE || target.importFromEPSG(out.epsg) != OGRERR_NONE) return false;
  own.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER), target.SetAxisMappingStrategy(OAMS_TRADITIONAL_GIS_ORDER);
  out.coordinate_system = own.GetName();
  if (!target.IsProjected() || std::abs(target.GetLinearUnits() - 1) > 1e-9) return false;
  const std::unique_ptr<OGRCoordinateTransformation> moved{OGRCreateCoordinateTransformation(&own, &target)};
  return moved && std::ranges::all_of(spots, [&](Spot& spot) { return moved->Transform(1, &spot.x, &spot.y) != 0; });
}

/// Qhull prints a page about such points, so it is never asked.
bool in_one_line(const std::vector<double>& x_m, const std::vector<double>& y_m) {
  constexpr double least_width_ratio = 1e-9;
  double length_m = 0, width_m = 0;
  SiteVector along;
  for (std::size_t i = 1; i < x_m.size(); ++i) {
    const SiteVector v{x_m[i] - x_m[0], y_m[i] - y_m[0]};
    if (length(v) > length_m) length_m = length(v), along = unit(v);
  }
  for (std::size_t i = 1; i < x_m.size(); ++i)
    width_m = std::max(width_m, std::abs(cross(along, SiteVector{x_m[i] - x_m[0], y_m[i] - y_m[0]})));
  return width_m <= least_width_ratio * length_m;
}

std::shared_ptr<SpotSurface> triangulated(const std::vector<Spot>& spots, const SpotUnits& units,
                                          const LevelSource& box) {
  auto out = std::make_shared<SpotSurface>();
  out->middle = between(box.low, box.high, 0.5);
  for (const Spot& spot : spots) {
    out->x_m.push_back(spot.x * units.plan_m - out->middle.x);
    out->y_m.push_back(spot.y * units.plan_m - out->middle.y);
    out->level_m.push_back(spot.level * units.level_m);
  }
  if (spots.size() < 3 || in_one_line(out->x_m, out->y_m)) return out;
  out->triangles.reset(
      GDALTriangulationCreateDelaunay(static_cast<int>(spots.size()), out->x_m.data(), out->y_m.data()));
  if (out->triangles &&
      !GDALTriangulationComputeBarycentricCoefficients(out->triangles.get(), out->x_m.data(), out->y_m.data()))
    out->triangles.reset();
  return out;
}

/// The level of a point from the triangle that holds it; `triangle` is where to begin the walk, and where it ended.
double level_in(const SpotSurface& surface, double x_m, double y_m, int& triangle) {
  if (!GDALTriangulationFindFacetDirected(surface.triangles.get(), triangle, x_m, y_m, &triangle)) {
    triangle = std::max(triangle, 0);
    return std::nan("");
  }
  std::array<double, 3> weight{};
  GDALTriangulationComputeBarycentricCoordinates(surface.triangles.get(), triangle, x_m, y_m, &weight[0], &weight[1],
                                                 &weight[2]);
  double level_m = 0;
  for (std::size_t i = 0; i < 3; ++i)
    level_m +=
        weight[i] * surface.level_m[static_cast<std::size_t>(surface.triangles->pasFacets[triangle].anVertexIdx[i])];
  return level_m;
}

std::vector<double> sample(const SpotSurface& surface, const GridFrame& frame, EarthPoint origin) {
  const QuietGdal quiet;
  std::vector<double> levels_m(frame.cells());
  int triangle = 0;
  for (std::size_t i = 0; i < levels_m.size(); ++i) {
    const SitePoint at = frame.centre(frame.cell_at_offset(i));
    levels_m[i] = level_in(surface, origin.x + at.x - surface.middle.x, origin.y + at.y - surface.middle.y, triangle);
  }
  return levels_m;
}

void find_box(const std::vector<Spot>& spots, double plan_m, LevelSource& out) {
  if (spots.empty()) return;
  out.low = out.high = {spots.front().x * plan_m, spots.front().y * plan_m};
  for (const Spot& spot : spots) {
    const EarthPoint at{spot.x * plan_m, spot.y * plan_m};
    out.low = {std::min(out.low.x, at.x), std::min(out.low.y, at.y)};
    out.high = {std::max(out.high.x, at.x), std::max(out.high.y, at.y)};
  }
}

}  // namespace

Expected<LevelSource> open_spot_levels(const std::filesystem::path& file, const Site& site,
                                       const ImportOptions& options) {
  const QuietGdal quiet;
  const std::string where = file.filename().string();
  const auto text = read_whole_file(file, most_list_bytes);
  if (!text) return tl::unexpected{text.error()};
  auto spots = read_spot_list(*text, where);
  if (!spots) return tl::unexpected{spots.error()};
  LevelSource out;
  if (auto problems = drop_repeats(*spots, where, out.notes); !problems.empty())
    return tl::unexpected{std::move(problems)};
  const SpotUnits units = units_for(site, options, out.notes);
  out.coordinate_system = "the site's own frame";
  if (options.epsg != 0 && !reproject(*spots, site, options.epsg, out)) {
    return refused(fmt::format("cannot be brought from EPSG {} into projected metres", options.epsg), where,
                   "give the EPSG code of a projected system");
  }
  find_box(*spots, units.plan_m, out);
  const auto surface = triangulated(*spots, units, out);
  if (!surface->triangles)
    return refused(fmt::format("its {} spots span no triangle", spots->size()), where,
                   "give at least three spots that do not lie in one line");
  out.notes.push_back(fmt::format("{} spots joined by {} triangles", spots->size(), surface->triangles->nFacets));
  out.sample = [surface](const GridFrame& frame, EarthPoint origin) { return sample(*surface, frame, origin); };
  return out;
}

}  // namespace yardwright
