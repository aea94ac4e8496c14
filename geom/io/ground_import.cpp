#include "geom/io/ground_import.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "geom/io/ground_holes.hpp"
#include "geom/io/level_source.hpp"
#include "geom/units/text.hpp"

namespace yardwright {

namespace {

bool is_spot_list(const std::filesystem::path& file) {
  static const std::set<std::string> endings{".csv", ".txt", ".xyz", ".tsv"};
  std::string ending = file.extension().string();
  std::ranges::transform(ending, ending.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return endings.contains(ending);
}

/// Where the site's origin lies among the file's metres.
struct Origin {
  EarthPoint at;
  std::string note;
};

Origin origin_for(const LevelSource& source, const Site& site, const ImportOptions& options) {
  if (site.tie.epsg != 0 && source.epsg == site.tie.epsg)
    return {{site.tie.easting_m, site.tie.northing_m}, "placed by the site's tie to the earth"};
  const EarthPoint middle = between(source.low, source.high, 0.5);
  const auto with_middle_at = [&](SitePoint at) { return middle - VectorIn<EarthFrame>{at.x, at.y}; };
  if (options.centre_at) return {with_middle_at(*options.centre_at), "its centre is placed where it was asked"};
  if (!site.lot.corners.empty() && source.epsg != 0) {
    const Box lot = box_of(site.lot.corners);
    return {with_middle_at(between(lot.low, lot.high, 0.5)),
            "the site was not tied to the earth: the file's centre is put on the lot's centre"};
  }
  if (source.epsg == 0) return {{0, 0}, "placed by its own numbers in the site's frame"};
  return {{std::floor(source.low.x), std::floor(source.low.y)},
          "the site's origin is put at the file's south-west corner"};
}

/// The box to cover, in the site frame: what the file covers, of it the lot and its margin where there is a lot.
Box wanted_box(const LevelSource& source, EarthPoint origin, const Site& site, double margin_m) {
  const auto in_site = [&](EarthPoint at) { return SitePoint{at.x - origin.x, at.y - origin.y}; };
  Box box{in_site(source.low), in_site(source.high)};
  if (site.lot.corners.empty()) return box;
  const Box around = grown(box_of(site.lot.corners), margin_m);
  return {{std::max(box.low.x, around.low.x), std::max(box.low.y, around.low.y)},
          {std::min(box.high.x, around.high.x), std::min(box.high.y, around.high.y)}};
}

/// How far a box ends short of the points, and towards which side; nothing where it holds them all.
struct Shortfall {
  double by_m = 0;
  const char* side = "";
};
Shortfall shortfall_of(const Box& box, const std::vector<SitePoint>& points) {
  Shortfall worst;
  const auto take = [&](double by_m, const char* side) {
    if (by_m > worst.by_m) worst = {by_m, side};
  };
  for (const SitePoint p : points) {
    take(box.low.x - p.x, "west");
    take(p.x - box.high.x, "east");
    take(box.low.y - p.y, "south");
    take(p.y - box.high.y, "north");
  }
  return worst;
}

/// The lattice line at or beyond `value`; lattice lines run through `through`.
double lattice_up(double value, double through, double cell_m) {
  return through + std::ceil((value - through) / cell_m - 1e-6) * cell_m;
}

/// Whole cells within the box, on the file's own cells where those have the same size, so that no level is blurred.
GridFrame frame_within(const Box& box, const LevelSource& source, EarthPoint origin, double cell_m) {
  const bool own_cells = std::abs(source.lattice_m - cell_m) < 1e-9;
  const SitePoint through = own_cells ? SitePoint{source.low.x - origin.x, source.low.y - origin.y} : SitePoint{0, 0};
  GridFrame frame;
  frame.cell_m = cell_m;
  frame.south_west = {lattice_up(box.low.x, through.x, cell_m), lattice_up(box.low.y, through.y, cell_m)};
  const auto count = [&](double from, double to) {
    return static_cast<int>(std::clamp(std::floor((to - from) / cell_m + 1e-6), 0.0, 1e6));
  };
  frame.columns = count(frame.south_west.x, box.high.x);
  frame.rows = count(frame.south_west.y, box.high.y);
  return frame;
}

Expected<GridFrame> frame_for(const LevelSource& source, EarthPoint origin, const Site& site,
                              const ImportOptions& options, const std::string& where) {
  if (!(options.cell_m > 0) || !(options.margin_m >= 0))
    return refused("the cell or the margin is not a length", where, "give a positive cell and no negative margin");
  const Box box = wanted_box(source, origin, site, options.margin_m);
  if (const Shortfall missing = shortfall_of(box, site.lot.corners); missing.by_m > options.cell_m) {
    return refused(fmt::format("does not cover the lot: it ends {} short of its {} side",
                               text_of(missing.by_m, Quantity::length, site.units), missing.side),
                   where, "give a file that covers it, or its place with --centre");
  }
  const GridFrame frame = frame_within(box, source, origin, options.cell_m);
  if (frame.cells() > most_cells) {
    const double least_cell_m = std::sqrt((box.high.x - box.low.x) * (box.high.y - box.low.y) / most_cells);
    return refused(fmt::format("needs {} cells, more than {}", frame.cells(), most_cells), where,
                   fmt::format("give --cell {:.2g}m or more, or draw the lot first", least_cell_m * 1.1));
  }
  if (frame.columns < 2 || frame.rows < 2) return refused("is smaller than two cells", where, "give a smaller cell");
  return frame;
}

Expected<LevelGrid> whole_grid(std::vector<double> levels_m, const GridFrame& frame, const ImportOptions& options,
                               const std::string& where, ImportedGround& out) {
  const Holes holes = mark_holes(levels_m, frame);
  if (holes.cells == frame.cells())
    return refused("has no level where the site lies", where, "give a file that covers it");
  if (holes.cells > 0) {
    if (!options.fill_holes)
      return refused(holes_words(holes, frame), where,
                     "fill them from their rims with --fill-holes, or give a file without holes");
    if (fill_holes(levels_m, frame) > 0)
      return refused("has holes that could not be filled", where, "give a file without holes");
    out.filled_cells = holes.cells;
    out.notes.push_back(holes_words(holes, frame) + "; they were filled from their rims");
  }
  std::vector<float> levels;
  levels.reserve(levels_m.size());
  for (const double level_m : levels_m) levels.push_back(static_cast<float>(level_m));
  return LevelGrid{frame, std::move(levels)};
}

}  // namespace

double metres_in(MapUnit unit) {
  switch (unit) {
    case MapUnit::foot: return 0.3048;
    case MapUnit::us_survey_foot: return 1200.0 / 3937.0;
    case MapUnit::metre: break;
  }
  return 1;
}

Expected<ImportedGround> import_ground(const std::filesystem::path& file, const Site& site,
                                       const ImportOptions& options) {
  const std::string where = file.filename().string();
  const auto source = is_spot_list(file) ? open_spot_levels(file, site, options) : open_raster(file, site, options);
  if (!source) return tl::unexpected{source.error()};
  const Origin origin = origin_for(*source, site, options);
  const auto frame = frame_for(*source, origin.at, site, options, where);
  if (!frame) return tl::unexpected{frame.error()};
  ImportedGround out;
  out.coordinate_system = source->coordinate_system;
  out.notes = source->notes;
  out.notes.push_back(origin.note);
  const auto levels = whole_grid(source->sample(*frame, origin.at), *frame, options, where, out);
  if (!levels) return tl::unexpected{levels.error()};
  out.ground = site.ground;  // what is known of its water and earth stays
  out.ground.levels = *levels;
  out.ground.file.clear();
  out.ground.source = fmt::format("{}, {}", where, source->coordinate_system);
  out.tie = source->epsg != 0 ? EarthTie{source->epsg, origin.at.x, origin.at.y} : site.tie;
  return out;
}

}  // namespace yardwright
