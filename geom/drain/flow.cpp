#include "geom/drain/flow.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <limits>
#include <numbers>

#include "geom/drain/flood.hpp"

namespace yardwright::drain {

namespace {

std::size_t at(Cell cell) { return static_cast<std::size_t>(cell); }

constexpr float diagonal = static_cast<float>(1 / std::numbers::sqrt2);

/// The neighbour to which the filled surface falls steepest, the first of equals; the cell itself where none is lower.
Cell steepest_inside(const float* filled_m, Cell cell, const std::array<Cell, 8>& steps) {
  const float here_m = filled_m[cell];
  float most_m = 0;
  Cell best = cell;
  for (std::size_t direction = 0; direction < 8; ++direction) {
    const float fall_m = (here_m - filled_m[cell + steps[direction]]) * (direction % 2 == 0 ? 1.0F : diagonal);
    if (fall_m > most_m) {
      most_m = fall_m;
      best = cell + steps[direction];
    }
  }
  return best;
}

Cell steepest_at_edge(const Flow& flow, Cell cell) {
  float most_m = 0;
  Cell best = cell;
  for_each_neighbour(flow.frame, cell, [&](Cell next, int direction) {
    const float fall_m = (flow.filled_m[at(cell)] - flow.filled_m[at(next)]) * (direction % 2 == 0 ? 1.0F : diagonal);
    if (fall_m > most_m) {
      most_m = fall_m;
      best = next;
    }
  });
  return best;
}

/// Downhill where the filled surface falls; elsewhere the way by which the flood came is kept.
void send_downhill(Flow& flow) {
  const int columns = flow.frame.columns, rows = flow.frame.rows;
  const auto wide = static_cast<Cell>(columns);
  const std::array<Cell, 8> steps{1, 1 - wide, -wide, -1 - wide, -1, wide - 1, wide, wide + 1};
  for (int row = 0; row < rows; ++row) {
    const bool edge_row = row == 0 || row == rows - 1;
    for (int column = 0; column < columns; ++column) {
      const Cell cell = row * wide + column;
      const bool edge = edge_row || column == 0 || column == columns - 1;
      const Cell down = edge ? steepest_at_edge(flow, cell) : steepest_inside(flow.filled_m.data(), cell, steps);
      if (down != cell) flow.receiver[at(cell)] = down;
    }
  }
}

void count_above(Flow& flow) {
  flow.cells_above.assign(flow.level_m.size(), 1);
  for (std::size_t i = flow.order.size(); i-- > 0;) {
    const Cell cell = flow.order[i], below = flow.receiver[at(cell)];
    if (below != outside) flow.cells_above[at(below)] += flow.cells_above[at(cell)];
  }
}

bool are_neighbours(const GridFrame& frame, Cell a, Cell b) {
  const CellIndex one = frame.cell_at_offset(at(a)), other = frame.cell_at_offset(at(b));
  return std::abs(one.column - other.column) <= 1 && std::abs(one.row - other.row) <= 1;
}

double step_m(const GridFrame& frame, Cell a, Cell b) {
  return distance(frame.centre(frame.cell_at_offset(at(a))), frame.centre(frame.cell_at_offset(at(b))));
}

}  // namespace

Flow flow_over(const LevelGrid& levels, const FlowOptions& options) {
  Flow flow;
  flow.frame = levels.frame();
  flow.level_m = levels.values();
  flow.links = options.links;
  flood(flow, options);
  send_downhill(flow);
  for (const Cell sink : options.sinks) flow.receiver[at(sink)] = outside;
  count_above(flow);
  return flow;
}

std::vector<std::vector<Cell>> cells_by_depression(const Flow& flow) {
  std::vector<std::vector<Cell>> cells(flow.depressions.size());
  for (std::size_t i = 0; i < flow.depression.size(); ++i) {
    if (flow.depression[i] != no_depression)
      cells[static_cast<std::size_t>(flow.depression[i])].push_back(static_cast<Cell>(i));
  }
  return cells;
}

std::vector<Cell> catchment(const Flow& flow, std::span<const Cell> outlets) {
  std::vector<std::uint8_t> is_outlet(flow.level_m.size(), 0);
  for (const Cell cell : outlets) is_outlet[at(cell)] = 1;
  std::vector<Cell> cells{outlets.begin(), outlets.end()};
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const Cell below = cells[i];
    const auto add_if_above = [&](Cell next) {
      if (flow.receiver[at(next)] == below && is_outlet[at(next)] == 0) cells.push_back(next);
    };
    for_each_neighbour(flow.frame, below, [&](Cell next, int) { add_if_above(next); });
    for (const Link& link : flow.links) {
      if (link.to == below && !are_neighbours(flow.frame, link.from, below)) add_if_above(link.from);
    }
  }
  return cells;
}

std::vector<Cell> flow_path(const Flow& flow, Cell from) {
  std::vector<Cell> path;
  for (Cell cell = from; cell != outside; cell = flow.receiver[at(cell)]) path.push_back(cell);
  return path;
}

std::vector<Cell> longest_path(const Flow& flow, std::span<const Cell> catchment, std::span<const Cell> outlets) {
  constexpr float not_in = -1;
  std::vector<float> way_m(flow.level_m.size(), not_in);
  for (const Cell cell : outlets) way_m[at(cell)] = 0;
  Cell farthest = outside;
  float most_m = not_in;
  for (const Cell cell : catchment) {
    const Cell below = flow.receiver[at(cell)];
    if (way_m[at(cell)] == not_in)
      way_m[at(cell)] = way_m[at(below)] + static_cast<float>(step_m(flow.frame, cell, below));
    if (way_m[at(cell)] > most_m) {
      most_m = way_m[at(cell)];
      farthest = cell;
    }
  }
  std::vector<Cell> path;
  for (Cell cell = farthest; cell != outside; cell = flow.receiver[at(cell)]) {
    path.push_back(cell);
    if (way_m[at(cell)] == 0) break;
  }
  return path;
}

SitePath as_path(const GridFrame& frame, std::span<const Cell> cells) {
  SitePath path;
  path.reserve(cells.size());
  for (const Cell cell : cells) path.push_back(frame.centre(frame.cell_at_offset(at(cell))));
  return path;
}

}  // namespace yardwright::drain
