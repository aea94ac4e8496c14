// Reads the catalogue of assets/grains.json.
#pragma once

#include <vector>

#include "geom/site/catalog/grain.hpp"

namespace yardwright {

std::vector<Grain> shipped_grains();

}  // namespace yardwright
