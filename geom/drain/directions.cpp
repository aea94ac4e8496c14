#include "geom/drain/directions.hpp"

#include <algorithm>
#include <numbers>

namespace yardwright::drain {

namespace {

constexpr float diagonal = static_cast<float>(1 / std::numbers::sqrt2);
constexpr std::array<std::size_t, 8> straight_first{0, 2, 4, 6, 1, 3, 5, 7};
constexpr std::int32_t not_known = -1;

std::size_t at(Cell cell) { return static_cast<std::size_t>(cell); }

/// The neighbour to which the filled surface falls steepest; `outside` where none is lower. Without a branch, so that a row
/// of cells goes four at a time.
inline Cell steepest_inside(const float* filled_m, Cell cell, const std::array<Cell, 8>& steps) {
  const float here_m = filled_m[cell];
  float most_m = 0;
  Cell best = outside;
  for (std::size_t direction = 0; direction < 8; ++direction) {
    const float fall_m = (here_m - filled_m[cell + steps[direction]]) * (direction % 2 == 0 ? 1.0F : diagonal);
    best = fall_m > most_m ? cell + steps[direction] : best;
    most_m = fall_m > most_m ? fall_m : most_m;
  }
  return best;
}

Cell steepest_at_edge(const Flow& flow, Cell cell) {
  float most_m = 0;
  Cell best = outside;
  for_each_neighbour(flow.frame, cell, [&](Cell next, int direction) {
    const float fall_m = (flow.filled_m[at(cell)] - flow.filled_m[at(next)]) * (direction % 2 == 0 ? 1.0F : diagonal);
    if (fall_m > most_m) {
      most_m = fall_m;
      best = next;
    }
  });
  return best;
}

Cell downhill(const Flow& flow, const Neighbourhood& ways, Cell cell) {
  return ways.on_rim(cell) ? steepest_at_edge(flow, cell) : steepest_inside(flow.filled_m.data(), cell, ways.steps());
}

/// Where nothing beside it is lower: on the level with a step less to go, or by a pipe.
Cell on_the_level(const Flow& flow, const Neighbourhood& ways, Cell cell) {
  const float here_m = flow.filled_m[at(cell)];
  const std::int32_t left = flow.steps[at(cell)] - 1;
  const auto leads_on = [&](Cell next) { return flow.steps[at(next)] == left && flow.filled_m[at(next)] == here_m; };
  for (const std::size_t direction : straight_first) {
    const Cell next = cell + ways.steps()[direction];
    if (leads_on(next)) return next;
  }
  Cell best = outside;
  ways.for_each_through_pipes_to(cell, [&](Cell next) {
    const bool falls = left < 0 && flow.filled_m[at(next)] < here_m;
    if (best == outside && (falls || leads_on(next))) best = next;
  });
  return best;
}

/// Its cells inside the rim, which begin after `row`.
void send_row_downhill(Flow& flow, const Neighbourhood& ways, Cell row) {
  const std::array<Cell, 8> steps = ways.steps();
  const float* filled_m = flow.filled_m.data();
  Cell* receiver = flow.receiver.data();
  const Cell end = row + static_cast<Cell>(flow.frame.columns) - 1;
  for (Cell cell = row + 1; cell < end; ++cell) receiver[cell] = steepest_inside(filled_m, cell, steps);
}

/// Gives back the cells beside which nothing is lower, their steps not known but where a pipe leads down.
std::vector<Cell> send_downhill(Flow& flow, const Neighbourhood& ways) {
  const auto cells = static_cast<Cell>(flow.receiver.size()), wide = static_cast<Cell>(flow.frame.columns);
  for (Cell row = wide; row < cells - wide; row += wide) send_row_downhill(flow, ways, row);
  std::vector<Cell> level;
  for (Cell cell = 0; cell < cells; ++cell) {
    if (ways.on_rim(cell)) flow.receiver[at(cell)] = steepest_at_edge(flow, cell);
    if (flow.receiver[at(cell)] != outside || ways.lets_out(cell)) continue;
    flow.steps[at(cell)] = not_known;
    level.push_back(cell);
  }
  for (const auto& [from, to] : flow.links)
    if (flow.filled_m[at(to)] < flow.filled_m[at(from)]) flow.steps[at(from)] = 0;
  for (const Cell cell : flow.sinks) flow.receiver[at(cell)] = outside;
  return level;
}

/// The level cells that lie beside one from which water falls.
std::vector<Cell> first_steps(Flow& flow, const Neighbourhood& ways, const std::vector<Cell>& level) {
  std::vector<Cell> first;
  for (const Cell cell : level) {
    if (flow.steps[at(cell)] != not_known) continue;
    const float here_m = flow.filled_m[at(cell)];
    const auto falls = [&](Cell next) { return flow.steps[at(next)] == 0 && flow.filled_m[at(next)] == here_m; };
    bool beside = std::ranges::any_of(ways.steps(), [&](Cell step) { return falls(cell + step); });
    ways.for_each_through_pipes_to(cell, [&](Cell next) { beside = beside || falls(next); });
    if (!beside) continue;
    flow.steps[at(cell)] = 1;
    first.push_back(cell);
  }
  return first;
}

/// In rings, each a step further from where the water falls.
void count_steps(Flow& flow, const Neighbourhood& ways, std::vector<Cell> waiting) {
  for (std::size_t i = 0; i < waiting.size(); ++i) {
    const Cell cell = waiting[i];
    ways.for_each_from(cell, [&](Cell next) {
      if (flow.steps[at(next)] != not_known || flow.filled_m[at(next)] != flow.filled_m[at(cell)]) return;
      flow.steps[at(next)] = flow.steps[at(cell)] + 1;
      waiting.push_back(next);
    });
  }
}

}  // namespace

void find_directions(Flow& flow, const Neighbourhood& ways) {
  flow.receiver.assign(flow.level_m.size(), outside);
  flow.steps.assign(flow.level_m.size(), 0);
  const std::vector<Cell> level = send_downhill(flow, ways);
  count_steps(flow, ways, first_steps(flow, ways, level));
  for (const Cell cell : level) flow.receiver[at(cell)] = on_the_level(flow, ways, cell);
}

Cell receiver_of(const Flow& flow, const Neighbourhood& ways, Cell cell) {
  if (ways.is_sink(cell)) return outside;
  const Cell down = downhill(flow, ways, cell);
  return down != outside || ways.lets_out(cell) ? down : on_the_level(flow, ways, cell);
}

}  // namespace yardwright::drain
