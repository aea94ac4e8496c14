// Brings existing ground into a site: GeoTIFF and ESRI ASCII grids in any coordinate system, or a list of spot
// levels as text. The result is a grid of metres in the site frame, bilinear from a raster and linear over the
// triangles of spot levels, with the tie of the frame to the earth. What was assumed stands in the notes; a cell
// without level is filled when asked, else the import is refused: no level is made up. docs/methods/ground.md
#pragma once

#include <filesystem>
#include <optional>

#include "geom/site/site.hpp"
#include "geom/units/problem.hpp"

namespace yardwright {

enum class MapUnit : std::uint8_t { metre, foot, us_survey_foot };
constexpr std::array<std::string_view, 3> names_of(MapUnit) { return {"m", "ft", "us-ft"}; }
double metres_in(MapUnit unit);

struct ImportOptions {
  double cell_m = 1;
  double margin_m = 100;                 ///< of ground around the lot, so that water from upslope is seen
  bool fill_holes = false;               ///< from their rims, instead of refusing
  std::optional<MapUnit> vertical_unit;  ///< in place of what the file says
  std::optional<MapUnit> plan_unit;      ///< of files without a coordinate system
  int epsg = 0;                          ///< of files that do not say their coordinate system; 0: not given
  std::optional<SitePoint> centre_at;    ///< where the file's centre lies, for sites not yet tied to the earth
};

struct ImportedGround {
  Ground ground;
  EarthTie tie;
  std::string coordinate_system;   ///< as the file has it, in words
  std::size_t filled_cells = 0;    ///< had no level and were filled from their rims
  std::vector<std::string> notes;  ///< what was read and assumed, a sentence each
};

/// Covers the lot and the margin as far as the file reaches; all of the file where the site has no lot.
Expected<ImportedGround> import_ground(const std::filesystem::path& file, const Site& site,
                                       const ImportOptions& options = {});

}  // namespace yardwright
