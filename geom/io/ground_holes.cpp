#include "geom/io/ground_holes.hpp"

#include <fmt/format.h>
#include <gdal_alg.h>
#include <gdal_priv.h>

#include <algorithm>
#include <cmath>

#include "geom/io/gdal_handles.hpp"

namespace yardwright {

Holes mark_holes(std::vector<double>& levels_m, const GridFrame& frame) {
  Holes holes;
  for (std::size_t i = 0; i < levels_m.size(); ++i) {
    if (levels_m[i] >= least_level_m && levels_m[i] <= most_level_m) continue;
    levels_m[i] = std::nan("");
    const SitePoint at = frame.centre(frame.cell_at_offset(i));
    if (holes.cells++ == 0) holes.low = holes.high = at;
    holes.low = {std::min(holes.low.x, at.x), std::min(holes.low.y, at.y)};
    holes.high = {std::max(holes.high.x, at.x), std::max(holes.high.y, at.y)};
  }
  return holes;
}

std::string holes_words(const Holes& holes, const GridFrame& frame) {
  return fmt::format(
      "{} of {} cells have no level, between {:.0f} and {:.0f} m east and {:.0f} and {:.0f} m north of the site's "
      "origin",
      holes.cells, frame.cells(), holes.low.x, holes.high.x, holes.low.y, holes.high.y);
}

std::size_t fill_holes(std::vector<double>& levels_m, const GridFrame& frame) {
  constexpr double no_level = -1e30;
  const GdalDataset grid = memory_grid(frame.columns, frame.rows);
  GDALRasterBand* band = grid->GetRasterBand(1);
  for (double& level_m : levels_m)
    if (std::isnan(level_m)) level_m = no_level;
  band->SetNoDataValue(no_level);
  const auto pass = [&](GDALRWFlag way) {
    return band->RasterIO(way, 0, 0, frame.columns, frame.rows, levels_m.data(), frame.columns, frame.rows, GDT_Float64,
                          0, 0, nullptr);
  };
  const double farthest_cells = std::hypot(frame.columns, frame.rows);
  bool done = pass(GF_Write) == CE_None;
  done = done && GDALFillNodata(band, nullptr, farthest_cells, 0, 0, nullptr, nullptr, nullptr) == CE_None;
  done = done && pass(GF_Read) == CE_None;
  for (double& level_m : levels_m)
    if (level_m == no_level) level_m = std::nan("");
  return done ? static_cast<std::size_t>(std::ranges::count_if(levels_m, [](double z) { return std::isnan(z); }))
              : frame.cells();
}

}  // namespace yardwright
