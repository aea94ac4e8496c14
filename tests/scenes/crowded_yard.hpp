// Yards thrown together without sense, too much on too little land: what mends have the hardest time with.
#pragma once

#include "geom/site/site.hpp"

namespace yardwright::scenes {

/// The same yard for the same seed: bins, machines, tanks, a shed, a line, a well and a house on 150 by 120 m, with two
/// ways through them and a hill.
Site crowded_yard(unsigned seed);

}  // namespace yardwright::scenes
