// Reads the catalogue of assets/covers.json.
#pragma once

#include <vector>

#include "geom/site/catalog/ground_cover.hpp"

namespace yardwright {

std::vector<GroundCover> shipped_covers();

}  // namespace yardwright
