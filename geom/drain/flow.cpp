#include "geom/drain/flow.hpp"

#include <cmath>

#include "geom/drain/neighbourhood.hpp"
#include "geom/drain/whole_flow.hpp"

namespace yardwright::drain {

namespace {

std::size_t at(Cell cell) { return static_cast<std::size_t>(cell); }

bool are_neighbours(const GridFrame& frame, Cell a, Cell b) {
  const CellIndex one = frame.cell_at_offset(at(a)), other = frame.cell_at_offset(at(b));
  return std::abs(one.column - other.column) <= 1 && std::abs(one.row - other.row) <= 1;
}

double step_m(const GridFrame& frame, Cell a, Cell b) {
  return distance(frame.centre(frame.cell_at_offset(at(a))), frame.centre(frame.cell_at_offset(at(b))));
}

}  // namespace

Flow flow_over(const LevelGrid& levels, const FlowOptions& options) {
  Flow flow = dry_flow(levels, options);
  run_whole(flow);
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
