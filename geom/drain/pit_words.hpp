// What a storm brings to a pit, in words: the ground, the runoff, and its peak by three methods side by side.
#pragma once

#include <string>
#include <vector>

#include "geom/drain/pit_water.hpp"

namespace yardwright::drain {

/// "12.1 h"
std::string hours_words(double time_s);

/// "runoff 37,154 ft3", "peak 15.7 cfs graphical, 20.1 cfs rational", "16.0 cfs at 12.1 h by unit hydrograph".
std::vector<std::string> runoff_words(const PitWater& water, UnitSystem units);

}  // namespace yardwright::drain
