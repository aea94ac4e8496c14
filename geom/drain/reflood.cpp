#include "geom/drain/reflood.hpp"

#include <algorithm>
#include <limits>
#include <queue>

namespace yardwright::drain {

namespace {

std::size_t at(Cell cell) { return static_cast<std::size_t>(cell); }

constexpr WayOut none{std::numeric_limits<float>::infinity(), 0};

/// Out of a cell at a level by way of the one beside it.
WayOut over(const WayOut& beside, float level_m) {
  return beside.filled_m < level_m ? WayOut{level_m, 0} : WayOut{beside.filled_m, beside.steps + 1};
}

/// Cells are looked at in the order of their ways out, so that all lesser ones are right by then. A cell whose way is gone
/// is lost; those beside it are asked, each in its turn, whether they still have theirs, and offer it to the lost.
class Reflooding {
 public:
  Reflooding(Flow& flow, const Neighbourhood& ways) : flow_{flow}, ways_{ways}, state_(flow.level_m.size()) {}

  bool run(std::span<const Cell> changed, std::int32_t most) {
    for (const Cell cell : changed) doubt(cell);
    while (!waiting_.empty()) {
      const Waiting next = waiting_.top();
      waiting_.pop();
      const State state = state_[at(next.cell)];
      if (state == right || (state == lost && next.way != way_out(next.cell))) continue;
      if (++looked_at > most) return false;
      if (state == lost)
        settle(next.cell, next.way);
      else
        look_at(next);
    }
    return true;
  }

  std::int32_t looked_at = 0;
  std::vector<Cell> found;  ///< anew, as before or not

 private:
  enum State : std::uint8_t { as_before, asked, lost, right };
  struct Waiting {
    WayOut way;
    Cell cell;
    bool operator<(const Waiting& other) const { return other.way < way; }  // the least on top
  };

  WayOut way_out(Cell cell) const { return {flow_.filled_m[at(cell)], flow_.steps[at(cell)]}; }

  void set_way_out(Cell cell, const WayOut& way) {
    flow_.filled_m[at(cell)] = way.filled_m;
    flow_.steps[at(cell)] = way.steps;
  }

  /// By way of those that are right, if all ways less than `known` are.
  WayOut least_way_out(Cell cell, const WayOut& known) const {
    const float level_m = flow_.level_m[at(cell)];
    if (ways_.lets_out(cell)) return {level_m, 0};
    WayOut least = none;
    ways_.for_each_onward(cell, [&](Cell next) {
      const WayOut way = way_out(next);
      const State state = state_[at(next)];
      if (state == right || (state != lost && way < known)) least = std::min(least, over(way, level_m));
    });
    return least;
  }

  void doubt(Cell cell) {
    const WayOut least = least_way_out(cell, none), now = way_out(cell);
    if (least != now) waiting_.push({std::min(least, now), cell});
  }

  void look_at(const Waiting& next) {
    const WayOut least = least_way_out(next.cell, next.way), now = way_out(next.cell);
    if (least < now && !(next.way < least)) return settle(next.cell, least);
    if (next.way < now) return waiting_.push({std::min(least, now), next.cell});
    if (least != now) return lose(next.cell, least);
    state_[at(next.cell)] = right;
    offer(next.cell);
  }

  void lose(Cell cell, const WayOut& least) {
    const WayOut before = way_out(cell);
    state_[at(cell)] = lost;
    set_way_out(cell, least);
    if (least < none) waiting_.push({least, cell});
    const auto ask = [&](Cell beside) {
      if (state_[at(beside)] != as_before || way_out(beside) < before) return;
      state_[at(beside)] = asked;
      waiting_.push({way_out(beside), beside});
    };
    ways_.for_each_onward(cell, ask);
    ways_.for_each_through_pipes_from(cell, ask);
  }

  void settle(Cell cell, const WayOut& way) {
    set_way_out(cell, way);
    state_[at(cell)] = right;
    found.push_back(cell);
    offer(cell);
  }

  /// A lost cell keeps the least that it was offered.
  void offer(Cell cell) {
    const WayOut way = way_out(cell);
    ways_.for_each_from(cell, [&](Cell from) {
      if (state_[at(from)] == right || ways_.lets_out(from)) return;
      const WayOut offered = over(way, flow_.level_m[at(from)]);
      if (!(offered < way_out(from))) return;
      if (state_[at(from)] == lost) set_way_out(from, offered);
      waiting_.push({offered, from});
    });
  }

  Flow& flow_;
  const Neighbourhood& ways_;
  std::vector<State> state_;
  std::priority_queue<Waiting> waiting_;
};

}  // namespace

std::optional<Reflooded> reflood(Flow& flow, const Neighbourhood& ways, std::span<const Cell> changed,
                                 std::int32_t most) {
  Reflooding work{flow, ways};
  if (!work.run(changed, most)) return std::nullopt;
  return Reflooded{std::move(work.found), work.looked_at};
}

}  // namespace yardwright::drain
