#include "geom/drain/flow_after.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

#include "geom/drain/area_above.hpp"
#include "geom/drain/depressions.hpp"
#include "geom/drain/directions.hpp"
#include "geom/drain/reflood.hpp"
#include "geom/drain/whole_flow.hpp"

namespace yardwright::drain {

namespace {

/// Looking at a cell again costs about four times as much as flooding it with all the others. Where an edit reaches so many that the
/// whole is found sooner, what was done until then is lost: at most a sixth of the whole.
constexpr std::int32_t least_share_left = 20;

std::size_t at(Cell cell) { return static_cast<std::size_t>(cell); }

/// Cells, each once, in the order in which they came.
class CellSet {
 public:
  explicit CellSet(std::size_t cells) : has_(cells) {}
  void add(Cell cell) {
    if (has_[at(cell)] != 0) return;
    has_[at(cell)] = 1;
    cells_.push_back(cell);
  }
  const std::vector<Cell>& cells() const { return cells_; }

 private:
  std::vector<std::uint8_t> has_;
  std::vector<Cell> cells_;
};

void add_pipes(CellSet& cells, const std::vector<Link>& links) {
  for (const Link& link : links) {
    cells.add(link.from);
    cells.add(link.to);
  }
}

/// Cells of another level, those that became or ceased to be sinks, and where pipes came or went all their ends.
CellSet changed_cells(const Flow& before, const Flow& flow) {
  CellSet changed{flow.level_m.size()};
  for (std::size_t i = 0; i < flow.level_m.size(); ++i)
    if (before.level_m[i] != flow.level_m[i]) changed.add(static_cast<Cell>(i));
  std::vector<Cell> sinks;
  std::ranges::set_symmetric_difference(before.sinks, flow.sinks, std::back_inserter(sinks));
  for (const Cell sink : sinks) changed.add(sink);
  if (before.links != flow.links) {
    add_pipes(changed, before.links);
    add_pipes(changed, flow.links);
  }
  return changed;
}

/// Around cells whose way out may be another: themselves and all that may send water to them.
std::vector<Cell> with_those_above(const Neighbourhood& ways, const CellSet& cells, std::size_t count) {
  CellSet all{count};
  for (const Cell cell : cells.cells()) {
    all.add(cell);
    ways.for_each_from(cell, [&](Cell from) { all.add(from); });
  }
  return all.cells();
}

std::vector<Turned> turn(Flow& flow, const Neighbourhood& ways, const std::vector<Cell>& cells) {
  std::vector<Turned> turned;
  for (const Cell cell : cells) {
    const Cell before = std::exchange(flow.receiver[at(cell)], receiver_of(flow, ways, cell));
    if (flow.receiver[at(cell)] != before) turned.push_back({cell, before});
  }
  return turned;
}

void copy_what_runs(Flow& flow, const Flow& before) {
  flow.filled_m = before.filled_m;
  flow.steps = before.steps;
  flow.receiver = before.receiver;
  flow.cells_above = before.cells_above;
  flow.depression = before.depression;
  flow.depressions = before.depressions;
}

/// The rest of it, where the ways out of the cells that were touched are right again.
void run_on(Flow& flow, const Flow& before, const Neighbourhood& ways, CellSet& touched) {
  const std::vector<Cell> around = with_those_above(ways, touched, flow.level_m.size());
  const std::vector<Turned> turned = turn(flow, ways, around);
  for (const Turned& one : turned) touched.add(one.cell);
  flow.work.receivers = static_cast<std::int32_t>(around.size());
  flow.work.above = recount_above(flow, turned);
  flow.work.depressions = find_depressions_again(flow, ways, {before, touched.cells()});
}

}  // namespace

Flow flow_after(const Flow& before, const LevelGrid& levels, const FlowOptions& options) {
  if (before.frame != levels.frame()) return flow_over(levels, options);
  Flow flow = dry_flow(levels, options);
  CellSet touched = changed_cells(before, flow);
  const std::size_t most = flow.level_m.size() / least_share_left;
  const bool few = touched.cells().size() <= most;
  if (few) copy_what_runs(flow, before);
  const Neighbourhood ways{flow};
  const auto reflooded = few ? reflood(flow, ways, touched.cells(), static_cast<std::int32_t>(most)) : std::nullopt;
  if (!reflooded) {
    run_whole(flow);
    return flow;
  }
  flow.work.filled = reflooded->looked_at;
  for (const Cell cell : reflooded->cells) touched.add(cell);
  run_on(flow, before, ways, touched);
  return flow;
}

}  // namespace yardwright::drain
