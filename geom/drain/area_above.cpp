#include "geom/drain/area_above.hpp"

#include <cassert>
#include <limits>

namespace yardwright::drain {

namespace {

std::size_t at(Cell cell) { return static_cast<std::size_t>(cell); }

/// What is too many (negative) or missing in the count of a cell. It is passed down like the water itself: since counts are
/// sums along the receivers, so are their errors.
class Recount {
 public:
  Recount(Flow& flow, std::span<const Turned> turned)
      : flow_{flow}, missing_(flow.receiver.size()), waits_for_(flow.receiver.size()), met_(flow.receiver.size()) {
    for (const auto& [cell, before] : turned) {
      if (before != outside) missing_[at(before)] -= flow.cells_above[at(cell)];
      if (flow.receiver[at(cell)] != outside) missing_[at(flow.receiver[at(cell)])] += flow.cells_above[at(cell)];
    }
    for (const auto& [cell, before] : turned) {
      meet_from(before);
      meet_from(flow.receiver[at(cell)]);
    }
  }

  std::int32_t run() {
    std::vector<Cell> heads;
    for (const Cell cell : below_)
      if (waits_for_[at(cell)] == 0) heads.push_back(cell);
    for (const Cell head : heads) pass_down(head);
    return static_cast<std::int32_t>(below_.size());
  }

 private:
  /// Notes every cell below, up to where another way below was noted.
  void meet_from(Cell cell) {
    if (cell == outside || met_[at(cell)] != 0) return;
    while (true) {
      met_[at(cell)] = 1;
      below_.push_back(cell);
      cell = flow_.receiver[at(cell)];
      if (cell == outside) return;
      ++waits_for_[at(cell)];
      if (met_[at(cell)] != 0) return;
    }
  }

  /// Down to the first cell that another way has yet to reach.
  void pass_down(Cell cell) {
    while (true) {
      const std::int32_t missing = missing_[at(cell)];
      flow_.cells_above[at(cell)] += missing;
      cell = flow_.receiver[at(cell)];
      if (cell == outside) return;
      missing_[at(cell)] += missing;
      if (--waits_for_[at(cell)] > 0) return;
    }
  }

  Flow& flow_;
  std::vector<std::int32_t> missing_, waits_for_;
  std::vector<std::uint8_t> met_;
  std::vector<Cell> below_;
};

}  // namespace

void count_above(Flow& flow) {
  constexpr auto done = std::numeric_limits<std::uint16_t>::max();
  assert(flow.links.size() + 8 < done);
  const std::size_t cells = flow.receiver.size();
  flow.cells_above.assign(cells, 1);
  std::vector<std::uint16_t> waits_for(cells, 0);
  for (const Cell below : flow.receiver)
    if (below != outside) ++waits_for[at(below)];
  for (std::size_t i = 0; i < cells; ++i) {
    if (waits_for[i] != 0) continue;
    Cell cell = static_cast<Cell>(i);  // a head; down to the first cell that another way has yet to reach
    while (true) {
      waits_for[at(cell)] = done;
      const Cell below = flow.receiver[at(cell)];
      if (below == outside) break;
      flow.cells_above[at(below)] += flow.cells_above[at(cell)];
      if (--waits_for[at(below)] > 0) break;
      cell = below;
    }
  }
}

std::int32_t recount_above(Flow& flow, std::span<const Turned> turned) {
  return turned.empty() ? 0 : Recount{flow, turned}.run();
}

}  // namespace yardwright::drain
