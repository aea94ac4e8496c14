#include "geom/drain/depressions.hpp"

#include <algorithm>
#include <numeric>

namespace yardwright::drain {

namespace {

std::size_t at(std::int32_t index) { return static_cast<std::size_t>(index); }

bool is_wet(const Flow& flow, Cell cell) { return flow.filled_m[at(cell)] > flow.level_m[at(cell)]; }

/// All cells of the depression around one, numbered. Wet neighbours stand at one level; the ends of a pipe may not.
template <class IsUnnumbered>
std::vector<Cell> gather(Flow& flow, const Neighbourhood& ways, Cell start, std::int32_t number,
                         const IsUnnumbered& is_unnumbered) {
  std::vector<Cell> cells{start};
  flow.depression[at(start)] = number;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const float water_m = flow.filled_m[at(cells[i])];
    const auto take = [&](Cell next) {
      if (!is_unnumbered(next) || flow.filled_m[at(next)] != water_m) return;
      flow.depression[at(next)] = number;
      cells.push_back(next);
    };
    const Cell cell = cells[i];
    ways.for_each_onward(cell, take);
    ways.for_each_through_pipes_from(cell, take);
  }
  return cells;
}

/// In the order of offsets, so that sums and the first of equals are the same however the cells were found.
void add_cell(Depression& pond, const Flow& flow, Cell cell) {
  if (pond.cells == 0) {
    pond.first = cell;
    pond.spill_level_m = flow.filled_m[at(cell)];
  }
  const double depth_m = pond.spill_level_m - flow.level_m[at(cell)];
  if (depth_m > pond.depth_m) {
    pond.depth_m = depth_m;
    pond.lowest = cell;
  }
  pond.volume_m3 += depth_m * flow.frame.cell_area_m2();
  ++pond.cells;
}

void find_spill(Depression& pond, const Flow& flow) {
  const std::int32_t number = flow.depression[at(pond.first)];
  pond.spill = pond.lowest;
  while (flow.depression[at(pond.spill)] == number) pond.spill = flow.receiver[at(pond.spill)];
}

/// Those touched get numbers beyond the old ones at first, then all are numbered in the order of their first cells.
class FindAgain {
 public:
  FindAgain(Flow& flow, const Neighbourhood& ways, const Flow& before)
      : flow_{flow}, ways_{ways}, before_{before}, gone_(before.depressions.size()) {}

  std::int32_t run(std::span<const Cell> touched) {
    for (const Cell cell : touched) {
      take_apart(before_.depression[at(cell)]);
      if (!is_wet(flow_, cell)) flow_.depression[at(cell)] = no_depression;
    }
    for (const Cell cell : touched) {
      find_from(cell);
      const auto find_rest = [&](Cell next) {
        if (is_apart(before_.depression[at(next)])) find_from(next);
      };
      ways_.for_each_onward(cell, find_rest);
      ways_.for_each_through_pipes_from(cell, find_rest);
    }
    number_anew();
    return worked_;
  }

 private:
  void take_apart(std::int32_t number) {
    if (number != no_depression) gone_[at(number)] = true;
  }

  bool is_apart(std::int32_t number) const { return number != no_depression && gone_[at(number)]; }

  void find_from(Cell start) {
    const auto old = static_cast<std::int32_t>(gone_.size());
    if (!is_wet(flow_, start) || flow_.depression[at(start)] >= old) return;
    const auto is_unnumbered = [&](Cell cell) { return flow_.depression[at(cell)] < old && is_wet(flow_, cell); };
    std::vector<Cell> cells =
        gather(flow_, ways_, start, old + static_cast<std::int32_t>(found_.size()), is_unnumbered);
    std::ranges::sort(cells);
    Depression pond;
    for (const Cell cell : cells) {
      take_apart(before_.depression[at(cell)]);
      add_cell(pond, flow_, cell);
    }
    find_spill(pond, flow_);
    found_.push_back(pond);
    worked_ += pond.cells;
  }

  void number_anew() {
    std::vector<Depression> all = before_.depressions;
    all.insert(all.end(), found_.begin(), found_.end());
    std::vector<std::int32_t> order;
    for (std::size_t i = 0; i < all.size(); ++i)
      if (i >= gone_.size() || !gone_[i]) order.push_back(static_cast<std::int32_t>(i));
    std::ranges::sort(order, {}, [&](std::int32_t number) { return all[at(number)].first; });
    std::vector<std::int32_t> number(all.size(), no_depression);
    flow_.depressions.clear();
    for (const std::int32_t old : order) {
      number[at(old)] = static_cast<std::int32_t>(flow_.depressions.size());
      flow_.depressions.push_back(all[at(old)]);
    }
    for (std::int32_t& of_cell : flow_.depression)
      if (of_cell != no_depression) of_cell = number[at(of_cell)];
  }

  Flow& flow_;
  const Neighbourhood& ways_;
  const Flow& before_;
  std::vector<bool> gone_;  ///< of the depressions before
  std::vector<Depression> found_;
  std::int32_t worked_ = 0;
};

}  // namespace

void find_depressions(Flow& flow, const Neighbourhood& ways) {
  constexpr std::int32_t unnumbered = -2;
  const auto cells = static_cast<Cell>(flow.level_m.size());
  flow.depression.resize(flow.level_m.size());
  for (Cell cell = 0; cell < cells; ++cell) flow.depression[at(cell)] = is_wet(flow, cell) ? unnumbered : no_depression;
  flow.depressions.clear();
  const auto is_unnumbered = [&](Cell cell) { return flow.depression[at(cell)] == unnumbered; };
  for (Cell cell = 0; cell < cells; ++cell) {
    if (flow.depression[at(cell)] == no_depression) continue;
    if (is_unnumbered(cell)) {
      gather(flow, ways, cell, static_cast<std::int32_t>(flow.depressions.size()), is_unnumbered);
      flow.depressions.emplace_back();
    }
    add_cell(flow.depressions[at(flow.depression[at(cell)])], flow, cell);
  }
  for (Depression& pond : flow.depressions) find_spill(pond, flow);
}

std::int32_t find_depressions_again(Flow& flow, const Neighbourhood& ways, const DepressionEdit& edit) {
  if (edit.touched.empty()) return 0;
  return FindAgain{flow, ways, edit.before}.run(edit.touched);
}

}  // namespace yardwright::drain
