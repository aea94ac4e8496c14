// Reads the catalogue of assets/vehicles.json.
#pragma once

#include <vector>

#include "geom/site/catalog/vehicle.hpp"

namespace yardwright {

std::vector<Vehicle> shipped_vehicles();

}  // namespace yardwright
