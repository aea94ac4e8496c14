// What covers each cell, for runoff: the storm's cover for the yard at large, over it drives by their surface, over
// them the cover areas as drawn, over all the roofs.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "geom/drain/flow.hpp"
#include "geom/drain/runoff.hpp"
#include "geom/site/catalog/catalogs.hpp"
#include "geom/site/site.hpp"

namespace yardwright::drain {

struct CellCover {
  double curve_number = 0;
  double rational_c = 0;
  double sheet_n = 0;
  bool paved = false;
  std::string name;
  SoilGroup soil = SoilGroup::c;
  bool roof = false;  ///< of something that stands there, not of a cover area
};

struct CoverMap {
  std::vector<CellCover> covers;
  std::vector<std::uint8_t> of_cell;  ///< index in `covers`; the first is the yard's
  std::vector<std::string> unknown;   ///< names that the catalogue lacks; their ground keeps what lies under

  const CellCover& at(Cell cell) const { return covers[of_cell[static_cast<std::size_t>(cell)]]; }
};

/// Empty `covers` where the storm's own cover is not known.
CoverMap cover_map(const Site& site, const Catalogs& catalogs, const GridFrame& frame);

/// The covers of the cells with their areas, each cover and soil group once, the largest first; none without area.
std::vector<CoverPart> cover_parts(const CoverMap& map, const GridFrame& frame, std::span<const Cell> cells);

}  // namespace yardwright::drain
