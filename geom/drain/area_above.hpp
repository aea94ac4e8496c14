// How many cells drain through each: along the receivers, which lead in no ring.
#pragma once

#include <span>

#include "geom/drain/flow.hpp"

namespace yardwright::drain {

/// Of all cells.
void count_above(Flow& flow);

/// A cell that sends its water elsewhere now.
struct Turned {
  Cell cell = outside;
  Cell before = outside;  ///< where it sent it
};

/// Puts the counts right below the cells that turned, and below nothing else; gives back how many cells that are.
std::int32_t recount_above(Flow& flow, std::span<const Turned> turned);

}  // namespace yardwright::drain
