// What the readers of ground files share: the area that a file covers in its projected metres, and the levels
// that a reader gives for the cells of a frame, NaN where it has none. Used by ground_import.cpp alone.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "geom/io/ground_import.hpp"

namespace yardwright {

/// Projected metres of a tie's EPSG code (or of the site frame where that is 0).
struct EarthFrame {};
using EarthPoint = PointIn<EarthFrame>;

struct LevelSource {
  EarthPoint low, high;  ///< the box that the file covers
  double lattice_m = 0;  ///< size of the file's own cells where its axes are the box's; else 0
  int epsg = 0;
  std::string coordinate_system;
  std::vector<std::string> notes;
  /// Levels in metres at the centres of a frame whose site origin lies at `origin`; row 0 southmost.
  std::function<std::vector<double>(const GridFrame& frame, EarthPoint origin)> sample;
};

inline constexpr std::size_t most_cells = 16'000'000;

Expected<LevelSource> open_raster(const std::filesystem::path& file, const Site& site, const ImportOptions& options);
Expected<LevelSource> open_spot_levels(const std::filesystem::path& file, const Site& site,
                                       const ImportOptions& options);

}  // namespace yardwright
