// What a taller leg would gain: for each discharge height, the ground on which one more bin of a size could stand, and how
// many of them at once. docs/methods/grow.md
#pragma once

#include <stop_token>

#include "geom/grow/allowed_region.hpp"

namespace yardwright::grow {

/// As many as any distributor is taken to have.
inline constexpr int outlets_of_taller_leg = 24;

struct AtHeight {
  double discharge_m = 0;
  double reached_m2 = 0;   ///< of the lot, by slope from this leg and every other with an outlet left
  double bearable_m2 = 0;  ///< on which nothing fails
  double free_m2 = 0;      ///< and no advice speaks against it
  int bins = 0;            ///< found to fit at once, by a quick packing
};

/// For the leg as it is and raised step by step (rule grow.leg-step), `steps` times,
/// with a distributor of `outlets_of_taller_leg`. What was found before a stop.
std::vector<AtHeight> at_heights(const Newcomer& newcomer, ItemId leg, int steps, const std::stop_token& stop = {});

/// Of the heights over the first, the one with most bins more per step of height, the lower of two; none where none gains.
const AtHeight* best_gain(const std::vector<AtHeight>& heights);

}  // namespace yardwright::grow
