// Where water runs on a grid of levels and where it stands: the filled surface, one receiver for every cell so that
// all of them drain to the open outer edge, how much lies above each cell, and the depressions. The ground itself is
// kept: filled less level is the depth of a full pond. Levels in metres; cells by their offset in the grid.
// Every part is defined cell by cell, by no order of work, so that after an edit flow_after finds anew only what the
// edit can reach and answers with the same bits as flow_over does.
// Method: priority flood (Barnes, Lehman, Mulla 2014), the heap replaced by a bit set over the ranks of the sorted
// cells; D8 on the filled surface, and across flats and ponds the fewest steps to where it falls. After an edit, the
// dynamic fixed point of Ramalingam and Reps (1996). Page: docs/methods/drain.md.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "geom/shape/grid.hpp"

namespace yardwright::drain {

using Cell = std::int32_t;  ///< offset in the grid
inline constexpr Cell outside = -1;
inline constexpr std::int32_t no_depression = -1;

/// A pipe through the surface: water that stands at `from` leaves at `to`.
struct Link {
  Cell from = outside;
  Cell to = outside;
  bool operator==(const Link&) const = default;
};

struct FlowOptions {
  std::vector<Cell> sinks;  ///< open holes: water that reaches one is gone, and it is never filled
  std::vector<Link> links;
};

/// Ground lower than every way out of it.
struct Depression {
  Cell first = outside;  ///< of its cells, by offset
  Cell spill = outside;  ///< the first cell on the way out, at the spill level
  Cell lowest = outside;
  double spill_level_m = 0;
  double depth_m = 0;    ///< at its lowest cell, full
  double volume_m3 = 0;  ///< full
  std::int32_t cells = 0;
  bool operator==(const Depression&) const = default;
};

/// How many cells were worked on for each part of a flow.
struct FlowWork {
  std::int32_t filled = 0;
  std::int32_t receivers = 0;
  std::int32_t above = 0;
  std::int32_t depressions = 0;
};

struct Flow {
  GridFrame frame;
  std::vector<float> level_m;
  std::vector<float> filled_m;
  std::vector<std::int32_t> steps;        ///< that water takes on the level before the filled surface falls
  std::vector<Cell> receiver;             ///< `outside` at the edge's outlets and in sinks
  std::vector<std::int32_t> cells_above;  ///< that drain through the cell, itself among them
  std::vector<std::int32_t> depression;   ///< index in `depressions`
  std::vector<Depression> depressions;    ///< in the order of their first cells
  std::vector<Cell> sinks;                ///< in order, each once
  std::vector<Link> links;                ///< the pipes by which it also runs
  FlowWork work;                          ///< that this flow took: every cell for a whole one

  double area_above_m2(Cell cell) const { return cells_above[static_cast<std::size_t>(cell)] * frame.cell_area_m2(); }
};

/// The grid may be empty; its levels must be finite.
Flow flow_over(const LevelGrid& levels, const FlowOptions& options = {});

/// The cells of every depression, by its number.
std::vector<std::vector<Cell>> cells_by_depression(const Flow& flow);

/// Every cell that drains through one of `outlets`, themselves among them; each once, after the cell that it drains to
/// unless that is no part of it.
std::vector<Cell> catchment(const Flow& flow, std::span<const Cell> outlets);

/// In the outermost cells: where their water goes beyond is not known.
inline bool on_rim(const GridFrame& frame, Cell cell) {
  const auto [column, row] = frame.cell_at_offset(static_cast<std::size_t>(cell));
  return column == 0 || row == 0 || column == frame.columns - 1 || row == frame.rows - 1;
}

/// Cell by cell from a cell to the edge or a sink.
std::vector<Cell> flow_path(const Flow& flow, Cell from);

/// The longest way by which water of a catchment reaches one of its outlets, from its far end down.
std::vector<Cell> longest_path(const Flow& flow, std::span<const Cell> catchment, std::span<const Cell> outlets);

/// Centres of cells, as a line to draw.
SitePath as_path(const GridFrame& frame, std::span<const Cell> cells);

}  // namespace yardwright::drain
