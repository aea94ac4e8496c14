// Between which cells water can go in one step: the eight neighbours, and through pipes; and where it leaves the grid,
// at the rim and in sinks. The flow whose sinks and links it reads must outlive it.
#pragma once

#include <array>

#include "geom/drain/flow.hpp"

namespace yardwright::drain {

/// Steps to the eight neighbours of a cell, counted from east to the right; straight ones are even.
struct Neighbour {
  int column, row;
};
inline constexpr Neighbour neighbours[8] = {{1, 0}, {1, -1}, {0, -1}, {-1, -1}, {-1, 0}, {-1, 1}, {0, 1}, {1, 1}};

/// Calls `use(neighbour cell, direction)` for every neighbour within the grid.
template <class Use>
void for_each_neighbour(const GridFrame& frame, Cell cell, Use&& use) {
  const CellIndex at = frame.cell_at_offset(static_cast<std::size_t>(cell));
  for (int direction = 0; direction < 8; ++direction) {
    const CellIndex next{at.column + neighbours[direction].column, at.row + neighbours[direction].row};
    if (frame.contains(next)) use(static_cast<Cell>(frame.offset(next)), direction);
  }
}

class Neighbourhood {
 public:
  explicit Neighbourhood(const Flow& flow);

  const std::array<Cell, 8>& steps() const { return steps_; }  ///< as offsets, for cells not on the rim
  bool on_rim(Cell cell) const { return (marks_[static_cast<std::size_t>(cell)] & rim) != 0; }
  bool is_sink(Cell cell) const { return (marks_[static_cast<std::size_t>(cell)] & sink) != 0; }
  /// Whether what reaches it is gone from the grid.
  bool lets_out(Cell cell) const { return (marks_[static_cast<std::size_t>(cell)] & (rim | sink)) != 0; }

  /// Calls `use(cell)` for the neighbours and the lower ends of pipes that begin here.
  template <class Use>
  void for_each_onward(Cell cell, Use&& use) const {
    for_each_beside(cell, use);
    for_each_through_pipes_to(cell, use);
  }

  /// The same for the pipes alone.
  template <class Use>
  void for_each_through_pipes_to(Cell cell, Use&& use) const {
    if ((marks_[static_cast<std::size_t>(cell)] & takes_in) == 0) return;
    for (const Link& link : flow_.links)
      if (link.from == cell) use(link.to);
  }

  /// Calls `use(cell)` for the neighbours and the upper ends of pipes that end here.
  template <class Use>
  void for_each_from(Cell cell, Use&& use) const {
    for_each_beside(cell, use);
    for_each_through_pipes_from(cell, use);
  }

  /// The same for the pipes alone.
  template <class Use>
  void for_each_through_pipes_from(Cell cell, Use&& use) const {
    if ((marks_[static_cast<std::size_t>(cell)] & gives_out) == 0) return;
    for (const Link& link : flow_.links)
      if (link.to == cell) use(link.from);
  }

 private:
  enum Mark : std::uint8_t { rim = 1, sink = 2, takes_in = 4, gives_out = 8 };

  template <class Use>
  void for_each_beside(Cell cell, Use& use) const {
    if (on_rim(cell)) return for_each_neighbour(flow_.frame, cell, [&](Cell next, int) { use(next); });
    for (const Cell step : steps_) use(cell + step);
  }

  void mark_rim();

  const Flow& flow_;
  std::vector<std::uint8_t> marks_;
  std::array<Cell, 8> steps_{};
};

}  // namespace yardwright::drain
