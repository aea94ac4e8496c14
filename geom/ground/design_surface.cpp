#include "geom/ground/design_surface.hpp"

#include <algorithm>
#include <cassert>

#include "geom/ground/grading.hpp"

namespace yardwright {

namespace {

template <class Kind>
void grade_all(const Site& site, Grading& grading) {
  for_each<Kind>(site, [&](const Item&, const Kind& kind) { grading.grade(kind); });
}

/// The cells from `low` to `high`, both counted.
struct CellRange {
  CellIndex low, high;
};

void widen(std::optional<CellRange>& range, CellIndex cell) {
  if (!range) range = {cell, cell};
  range->low = {std::min(range->low.column, cell.column), std::min(range->low.row, cell.row)};
  range->high = {std::max(range->high.column, cell.column), std::max(range->high.row, cell.row)};
}

}  // namespace

bool shapes_ground(const Thing& thing) {
  const Drive* drive = std::get_if<Drive>(&thing);
  return std::holds_alternative<Pad>(thing) || std::holds_alternative<Swale>(thing) ||
         std::holds_alternative<Berm>(thing) || std::holds_alternative<RetainingWall>(thing) ||
         (drive != nullptr && drive->is_graded());
}

DesignSurface design_surface(const Site& site) {
  const LevelGrid& existing = site.ground.levels;
  if (existing.empty() || std::ranges::none_of(site.items, shapes_ground, &Item::thing)) return {existing, existing};
  Grading grading{existing};
  grade_all<RetainingWall>(site, grading);
  grade_all<Pad>(site, grading);
  grade_all<Drive>(site, grading);
  grade_all<Swale>(site, grading);
  grade_all<Berm>(site, grading);
  return {existing, std::move(grading).levels()};
}

std::optional<Box> affected_area(const Item& item, const LevelGrid& ground) {
  if (ground.empty() || !shapes_ground(item.thing)) return std::nullopt;
  Grading grading{ground};
  if (const Pad* pad = as<Pad>(item)) grading.grade(*pad);
  if (const Drive* drive = as<Drive>(item)) grading.grade(*drive);
  if (const Swale* swale = as<Swale>(item)) grading.grade(*swale);
  if (const Berm* berm = as<Berm>(item)) grading.grade(*berm);
  return changed_area(ground, std::move(grading).levels());
}

std::optional<Box> changed_area(const LevelGrid& before, const LevelGrid& after) {
  assert(before.frame() == after.frame());
  if (before.same_data(after)) return std::nullopt;
  const GridFrame& frame = before.frame();
  std::optional<CellRange> changed;
  for (std::size_t i = 0; i < frame.cells(); ++i) {
    if (before.values()[i] != after.values()[i]) widen(changed, frame.cell_at_offset(i));
  }
  if (!changed) return std::nullopt;
  const double half_m = frame.cell_m / 2;
  return grown(Box{frame.centre(changed->low), frame.centre(changed->high)}, half_m);
}

}  // namespace yardwright
