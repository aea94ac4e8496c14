// Reads the catalogue of assets/storms.json.
#pragma once

#include <vector>

#include "geom/site/catalog/storm_curve.hpp"

namespace yardwright {

std::vector<StormCurve> shipped_storms();

}  // namespace yardwright
