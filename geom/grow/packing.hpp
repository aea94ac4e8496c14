// As many places as can be found within a region of which no two are in each other's way. A start on lattices, then one
// more place at a time: all of them pushed apart until none is in another's way, or given up. What is found is a
// lower bound; an upper bound stands beside it. docs/methods/grow.md
#pragma once

#include <functional>
#include <stop_token>

#include "geom/shape/polygon.hpp"

namespace yardwright::grow {

struct PackingTask {
  Region region;    ///< where each place may lie
  Region conflict;  ///< how one may not lie from another: around the origin, the same turned half around
};

struct PackingEffort {
  unsigned seed = 1;
  int tries = 40;  ///< at one place more, before it is given up
  std::stop_token stop{};
  std::function<void(std::size_t places)> found{};  ///< told each time there are more
};

/// The same for the same seed, where it is not stopped.
std::vector<SitePoint> packed(const PackingTask& task, const PackingEffort& effort = {});

/// No packing has more places: by the area around them, and by Oler's inequality for the hull of each part (from memory:
/// N. Oler, An inequality in the geometry of numbers, Acta Mathematica 105, 1961).
int most_places(const PackingTask& task);

}  // namespace yardwright::grow
