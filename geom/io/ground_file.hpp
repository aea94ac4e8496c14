// The levels of the ground as a GeoTIFF of one float32 band in metres. With an earth tie the file has its
// coordinate system and can be opened by any GIS; without one its coordinates are the site frame.
#pragma once

#include <filesystem>

#include "geom/shape/grid.hpp"
#include "geom/site/site.hpp"
#include "geom/units/problem.hpp"

namespace yardwright {

/// Refused: cells without a level, cells that are not square or not north up, a coordinate system that is not the
/// tie's, more than 50 million cells.
Expected<LevelGrid> load_level_grid(const std::filesystem::path& path, const EarthTie& tie);

/// Replaces the file at once or not at all; load_level_grid gives back exactly `grid`.
tl::expected<void, Problems> save_level_grid(const LevelGrid& grid, const EarthTie& tie,
                                             const std::filesystem::path& path);

}  // namespace yardwright
