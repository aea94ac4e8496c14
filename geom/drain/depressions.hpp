// The depressions of a filled surface: cells that lie under it and touch, or that a pipe joins at one level of water.
#pragma once

#include <span>

#include "geom/drain/neighbourhood.hpp"

namespace yardwright::drain {

/// All of them.
void find_depressions(Flow& flow, const Neighbourhood& ways);

/// Where an edit worked: a copy of the flow before, put right.
struct DepressionEdit {
  const Flow& before;
  std::span<const Cell>
      touched;  ///< cells with another level, way out or receiver, and the ends of pipes that came or went
};

/// Only those that it touched, as they were and as they are; gives back how many cells they have.
std::int32_t find_depressions_again(Flow& flow, const Neighbourhood& ways, const DepressionEdit& edit);

}  // namespace yardwright::drain
