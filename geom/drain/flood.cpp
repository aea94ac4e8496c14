#include "geom/drain/flood.hpp"

#include <algorithm>
#include <array>

#include "geom/drain/rank_cells.hpp"
#include "geom/drain/rank_queue.hpp"

namespace yardwright::drain {

namespace {

/// First come, first served; forgets what was taken whenever it is empty.
class Line {
 public:
  bool empty() const { return next_ == cells_.size(); }
  void add(Cell cell) { cells_.push_back(cell); }
  Cell take() {
    const Cell cell = cells_[next_++];
    if (empty()) {
      cells_.clear();
      next_ = 0;
    }
    return cell;
  }

 private:
  std::vector<Cell> cells_;
  std::size_t next_ = 0;
};

/// Three stores of waiting cells: ponds (below the water that entered them) before flats (level with it) before
/// higher ground by rank. A pond is flooded whole as soon as it is entered, so that it has one number.
class Flooding {
 public:
  Flooding(Flow& flow, const FlowOptions& options)
      : flow_{flow}, ranking_{rank_cells(flow.level_m)}, waiting_{flow.level_m.size()}, state_(flow.level_m.size()) {
    const auto wide = static_cast<Cell>(flow.frame.columns);
    steps_ = {1, 1 - wide, -wide, -1 - wide, -1, wide - 1, wide, wide + 1};
    for (const Link& link : options.links) {
      links_.push_back(link);
      state_[at(link.to)] |= has_link;
    }
    seed_edge();
    for (const Cell sink : options.sinks) seed(sink);
  }

  void run() {
    while (!waiting_.empty()) {
      const Cell cell = ranking_.cell_of_rank[waiting_.take()];
      flow_.filled_m[at(cell)] = flow_.level_m[at(cell)];
      leave(cell);
      while (!flat_.empty()) leave(flat_.take());
    }
  }

 private:
  enum State : std::uint8_t { reached = 1, on_edge = 2, has_link = 4 };
  static std::size_t at(Cell cell) { return static_cast<std::size_t>(cell); }

  void seed(Cell cell) {
    if ((state_[at(cell)] & reached) != 0) return;
    state_[at(cell)] |= reached;
    waiting_.add(at(ranking_.rank_of_cell[at(cell)]));
  }

  void seed_edge() {
    const auto seed_at = [this](int column, int row) {
      const auto cell = static_cast<Cell>(flow_.frame.offset({column, row}));
      seed(cell);
      state_[at(cell)] |= on_edge;
    };
    for (int column = 0; column < flow_.frame.columns; ++column) {
      seed_at(column, 0);
      seed_at(column, flow_.frame.rows - 1);
    }
    for (int row = 0; row < flow_.frame.rows; ++row) {
      seed_at(0, row);
      seed_at(flow_.frame.columns - 1, row);
    }
  }

  /// A flooded cell passes the water on to its neighbours.
  void leave(Cell cell) {
    flow_.order.push_back(cell);
    const float water_m = flow_.filled_m[at(cell)];
    if ((state_[at(cell)] & on_edge) != 0) {
      for_each_neighbour(flow_.frame, cell, [&](Cell next, int) { reach(cell, next, water_m); });
    } else {
      for (const Cell step : steps_) {
        if ((state_[at(cell + step)] & reached) == 0) reach(cell, cell + step, water_m);
      }
    }
    if ((state_[at(cell)] & has_link) != 0) {
      for (const Link& link : links_) {
        if (link.to == cell) reach(cell, link.from, water_m);
      }
    }
  }

  void reach(Cell from, Cell next, float water_m) {
    if ((state_[at(next)] & reached) != 0) return;
    state_[at(next)] |= reached;
    flow_.receiver[at(next)] = from;
    const float level_m = flow_.level_m[at(next)];
    if (level_m > water_m) return waiting_.add(at(ranking_.rank_of_cell[at(next)]));
    flow_.filled_m[at(next)] = water_m;
    if (level_m == water_m) return flat_.add(next);
    const bool new_pond = flow_.depression[at(from)] == no_depression;
    enter_pond(from, next, water_m);
    pond_.add(next);
    if (new_pond) flood_pond();
  }

  /// Its cells enter no further pond, so that this goes one deep.
  void flood_pond() {
    while (!pond_.empty()) leave(pond_.take());
  }

  void enter_pond(Cell from, Cell next, float water_m) {
    std::int32_t& number = flow_.depression[at(next)];
    number = flow_.depression[at(from)];
    if (number == no_depression) {
      number = static_cast<std::int32_t>(flow_.depressions.size());
      flow_.depressions.push_back({from, next, water_m});
    }
    Depression& pond = flow_.depressions[at(number)];
    const double depth_m = static_cast<double>(water_m) - flow_.level_m[at(next)];
    if (depth_m > pond.depth_m) {
      pond.depth_m = depth_m;
      pond.lowest = next;
    }
    pond.volume_m3 += depth_m * flow_.frame.cell_area_m2();
    ++pond.cells;
  }

  Flow& flow_;
  Ranking ranking_;
  RankQueue waiting_;
  std::vector<std::uint8_t> state_;
  std::vector<Link> links_;
  std::array<Cell, 8> steps_{};
  Line pond_, flat_;
};

}  // namespace

void flood(Flow& flow, const FlowOptions& options) {
  const std::size_t cells = flow.level_m.size();
  flow.filled_m.assign(cells, 0);
  flow.receiver.assign(cells, outside);
  flow.depression.assign(cells, no_depression);
  flow.order.reserve(cells);
  if (cells > 0) Flooding{flow, options}.run();
}

}  // namespace yardwright::drain
