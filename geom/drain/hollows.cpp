#include "geom/drain/hollows.hpp"

#include <algorithm>
#include <numbers>

#include "geom/drain/neighbourhood.hpp"

namespace yardwright::drain {

namespace {

std::size_t at(std::int32_t index) { return static_cast<std::size_t>(index); }

}  // namespace

/// Raises the water cell by cell: one with no wet neighbour begins a hollow, one between two lets them meet.
class Hollows::Builder {
 public:
  Builder(Hollows& made, double spill_level_m) : made_{made}, flow_{made.flow_}, spill_level_m_{spill_level_m} {}

  void build() {
    for (const Cell cell : made_.cells_) add(cell);
    for (HollowIndex last = outermost(0); const HollowIndex first : innermost_) {
      if (outermost(first) == last) continue;
      last = meet(last, outermost(first), spill_level_m_, first, innermost_of(last));
    }
    if (!made_.hollows_.empty()) close(outermost(0), spill_level_m_);
  }

 private:
  struct Ground {
    double cells = 0, sum_m = 0;
  };

  HollowIndex begin() {
    made_.hollows_.emplace_back();
    ground_.emplace_back();
    const auto hollow = static_cast<HollowIndex>(made_.hollows_.size() - 1);
    outermost_.push_back(hollow);
    return hollow;
  }

  HollowIndex outermost(HollowIndex hollow) {
    while (outermost_[at(hollow)] != hollow) {
      outermost_[at(hollow)] = outermost_[at(outermost_[at(hollow)])];
      hollow = outermost_[at(hollow)];
    }
    return hollow;
  }

  HollowIndex innermost_of(HollowIndex hollow) const {
    while (!made_.hollows_[at(hollow)].is_innermost()) hollow = made_.hollows_[at(hollow)].parts[0];
    return hollow;
  }

  void close(HollowIndex hollow, double brim_m) {
    made_.hollows_[at(hollow)].brim_m = brim_m;
    made_.hollows_[at(hollow)].holds_m3 =
        std::max(0.0, brim_m * ground_[at(hollow)].cells - ground_[at(hollow)].sum_m) * flow_.frame.cell_area_m2();
  }

  /// Two outermost hollows become one. Over the brim the first spills into `first_into`, the other into `other_into`.
  HollowIndex meet(HollowIndex first, HollowIndex other, double brim_m, HollowIndex first_into,
                   HollowIndex other_into) {
    close(first, brim_m);
    close(other, brim_m);
    const HollowIndex both = begin();
    made_.hollows_[at(both)].parts = {first, other};
    made_.hollows_[at(first)].spills_into = first_into;
    made_.hollows_[at(other)].spills_into = other_into;
    for (const HollowIndex part : {first, other}) {
      made_.hollows_[at(part)].around = both;
      outermost_[at(part)] = both;
      ground_[at(both)].cells += ground_[at(part)].cells;
      ground_[at(both)].sum_m += ground_[at(part)].sum_m;
    }
    return both;
  }

  /// The innermost hollow towards which the ground falls steepest from a cell; none where no neighbour is wet.
  HollowIndex downhill(Cell cell) const {
    HollowIndex best = no_hollow;
    double most_m = -1;
    for_each_neighbour(flow_.frame, cell, [&](Cell next, int direction) {
      if (made_.at_cell_[at(next)] == no_hollow) return;
      const double fall_m = (static_cast<double>(flow_.level_m[at(cell)]) - flow_.level_m[at(next)]) *
                            (direction % 2 == 0 ? 1 : 1 / std::numbers::sqrt2);
      if (fall_m <= most_m) return;
      most_m = fall_m;
      best = made_.at_cell_[at(next)];
    });
    return best;
  }

  void add(Cell cell) {
    HollowIndex here = downhill(cell);
    if (here == no_hollow) {
      here = begin();
      innermost_.push_back(here);
    }
    const double level_m = flow_.level_m[at(cell)];
    for_each_neighbour(flow_.frame, cell, [&](Cell next, int) {
      const HollowIndex there = made_.at_cell_[at(next)];
      if (there != no_hollow && outermost(there) != outermost(here))
        meet(outermost(here), outermost(there), level_m, there, here);
    });
    made_.at_cell_[at(cell)] = here;
    Ground& ground = ground_[at(outermost(here))];
    ground.cells += 1;
    ground.sum_m += level_m;
  }

  Hollows& made_;
  const Flow& flow_;
  double spill_level_m_;
  std::vector<HollowIndex> outermost_, innermost_;
  std::vector<Ground> ground_;
};

Hollows::Hollows(const Flow& flow, std::int32_t depression) : flow_{flow}, at_cell_(flow.level_m.size(), no_hollow) {
  for (std::size_t i = 0; i < flow.depression.size(); ++i) {
    if (flow.depression[i] == depression) cells_.push_back(static_cast<Cell>(i));
  }
  std::ranges::stable_sort(cells_, {}, [&](Cell cell) { return flow.level_m[at(cell)]; });
  Builder{*this, flow.depressions[at(depression)].spill_level_m}.build();
}

HollowIndex Hollows::innermost_at(Cell cell) const { return at_cell_[at(cell)]; }

HollowIndex Hollows::beside(HollowIndex hollow) const {
  const auto& parts = hollows_[at(hollows_[at(hollow)].around)].parts;
  return parts[0] == hollow ? parts[1] : parts[0];
}

void Hollows::add_water(HollowIndex hollow, double volume_m3) {
  for (; hollow != no_hollow; hollow = hollows_[at(hollow)].around) hollows_[at(hollow)].stands_m3 += volume_m3;
}

double Hollows::pour(HollowIndex hollow, double volume_m3) {
  while (hollow != no_hollow) {
    const Hollow& here = hollows_[at(hollow)];
    const double taken_m3 = std::clamp(here.holds_m3 - here.stands_m3, 0.0, volume_m3);
    add_water(hollow, taken_m3);
    volume_m3 -= taken_m3;
    if (volume_m3 <= 0) return 0;
    if (here.around == no_hollow) break;
    hollow = hollows_[at(beside(hollow))].is_full() ? here.around : here.spills_into;
  }
  return volume_m3;
}

double Hollows::rain_on(std::span<const Cell> catchment, double runoff_m) {
  std::vector<HollowIndex> drains_to = at_cell_;
  std::vector<double> cells(hollows_.size(), 0);
  for (const Cell cell : catchment) {
    HollowIndex& to = drains_to[at(cell)];
    const Cell below = flow_.receiver[at(cell)];
    if (to == no_hollow && below != outside) to = drains_to[at(below)];
    if (to != no_hollow) ++cells[at(to)];
  }
  double spilled_m3 = 0;
  for (std::size_t i = 0; i < hollows_.size(); ++i) {
    spilled_m3 += pour(static_cast<HollowIndex>(i), cells[i] * runoff_m * flow_.frame.cell_area_m2());
  }
  return spilled_m3;
}

/// The widest hollow whose water stands at one level with the water at the cell.
HollowIndex Hollows::pooled_at(Cell cell) const {
  HollowIndex hollow = innermost_at(cell);
  while (hollows_[at(hollow)].is_full() && hollows_[at(hollow)].around != no_hollow &&
         hollows_[at(beside(hollow))].is_full()) {
    hollow = hollows_[at(hollow)].around;
  }
  return hollow;
}

bool Hollows::lies_in(HollowIndex inner, HollowIndex outer) const {
  while (inner != no_hollow && inner != outer) inner = hollows_[at(inner)].around;
  return inner == outer;
}

double Hollows::level_m(Cell cell) const {
  const HollowIndex pool = pooled_at(cell);
  const Hollow& water = hollows_[at(pool)];
  const double wanted_m = water.stands_m3 / flow_.frame.cell_area_m2();  // of water standing on one cell
  double cells = 0, sum_m = 0, level_m = water.brim_m;
  for (const Cell under : cells_) {
    if (!lies_in(innermost_at(under), pool)) continue;
    const double ground_m = flow_.level_m[at(under)];
    if (cells > 0 && level_m <= ground_m) break;
    cells += 1;
    sum_m += ground_m;
    level_m = (wanted_m + sum_m) / cells;
  }
  return std::min(level_m, water.brim_m);
}

}  // namespace yardwright::drain
