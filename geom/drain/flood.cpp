#include "geom/drain/flood.hpp"

#include "geom/drain/rank_cells.hpp"
#include "geom/drain/rank_queue.hpp"

namespace yardwright::drain {

namespace {

/// Two stores of waiting cells: ponds and flats (no higher than the water that entered them), in any order, before
/// higher ground by rank.
class Flooding {
 public:
  Flooding(Flow& flow, const Neighbourhood& ways)
      : flow_{flow},
        ways_{ways},
        ranking_{rank_cells(flow.level_m)},
        waiting_{flow.level_m.size()},
        reached_(flow.level_m.size()) {
    for (std::size_t i = 0; i < reached_.size(); ++i) {
      if (!ways.lets_out(static_cast<Cell>(i))) continue;
      reached_[i] = 1;
      waiting_.add(at(ranking_.rank_of_cell[i]));
    }
  }

  void run() {
    while (!waiting_.empty()) {
      const Cell first = ranking_.cell_of_rank[waiting_.take()];
      const float water_m = flow_.filled_m[at(first)] = flow_.level_m[at(first)];
      level_.assign(1, first);
      for (std::size_t i = 0; i < level_.size(); ++i) leave(level_[i], water_m);
    }
  }

 private:
  static std::size_t at(Cell cell) { return static_cast<std::size_t>(cell); }

  /// A flooded cell passes the water on to its neighbours.
  void leave(Cell cell, float water_m) {
    ways_.for_each_from(cell, [&](Cell next) {
      if (reached_[at(next)] == 0) reach(next, water_m);
    });
  }

  void reach(Cell next, float water_m) {
    reached_[at(next)] = 1;
    if (flow_.level_m[at(next)] > water_m) return waiting_.add(at(ranking_.rank_of_cell[at(next)]));
    flow_.filled_m[at(next)] = water_m;
    level_.push_back(next);
  }

  Flow& flow_;
  const Neighbourhood& ways_;
  Ranking ranking_;
  RankQueue waiting_;
  std::vector<std::uint8_t> reached_;
  std::vector<Cell> level_;
};

}  // namespace

void flood(Flow& flow, const Neighbourhood& ways) {
  flow.filled_m.assign(flow.level_m.size(), 0);
  if (!flow.level_m.empty()) Flooding{flow, ways}.run();
}

}  // namespace yardwright::drain
