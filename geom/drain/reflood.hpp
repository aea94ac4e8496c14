// The filled surface and the steps on the level put right after an edit, without flooding the whole ground again.
// How water leaves a cell is a pair, the level to which it must rise and the steps it then takes on that level, and the
// least one, by level and then steps, that the cells beside it allow. A step makes the pair greater, so no cells can hold each
// other up in a ring, and the pairs of all cells are one fixed point whatever the order of work.
// Method: Ramalingam and Reps 1996, an incremental algorithm for a generalization of the shortest-path problem.
#pragma once

#include <optional>
#include <span>

#include "geom/drain/neighbourhood.hpp"

namespace yardwright::drain {

/// How water leaves a cell.
struct WayOut {
  float filled_m = 0;
  std::int32_t steps = 0;
  bool operator==(const WayOut&) const = default;
  bool operator<(const WayOut& other) const {
    return filled_m < other.filled_m || (filled_m == other.filled_m && steps < other.steps);
  }
};

struct Reflooded {
  std::vector<Cell> cells;  ///< whose way out is another now
  std::int32_t looked_at = 0;
};

/// `flow` has its new levels, sinks and links and else is as before; `changed` are the cells whose level is another, or that
/// became or ceased to be a sink or the upper end of a pipe. Nothing where more than `most` cells would have to be
/// looked at: then the flow is spoilt.
std::optional<Reflooded> reflood(Flow& flow, const Neighbourhood& ways, std::span<const Cell> changed,
                                 std::int32_t most);

}  // namespace yardwright::drain
