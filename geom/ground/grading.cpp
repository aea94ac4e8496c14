#include "geom/ground/grading.hpp"

#include <algorithm>
#include <limits>
#include <utility>

#include "geom/ground/cells_along.hpp"
#include "geom/ground/level_line.hpp"

namespace yardwright {

namespace {

constexpr double curve_step_m = 2.0;  // of the chords of a drive's corners: off the arc by 3 cm where it is 15 m wide

/// Rise of a side slope over a run beyond the level part; none on the level part, whatever the ratio.
double rise_m(double run_m, double side_slope_ratio) { return run_m > 0 ? run_m / side_slope_ratio : 0.0; }

/// Even-odd, for one ring; boundary points may fall on either side, where the distance to it is 0 anyhow.
bool inside_ring(const SitePath& ring, SitePoint point) {
  bool inside = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
    const SitePoint a = ring[i], b = ring[j];
    if ((a.y > point.y) == (b.y > point.y)) continue;
    if (point.x < a.x + (b.x - a.x) * (point.y - a.y) / (b.y - a.y)) inside = !inside;
  }
  return inside;
}

/// How far a point lies outside a ring, and from where on the ring.
struct Beyond {
  double run_m = 0;
  SitePoint from;
};

/// For side slopes whose planes meet in a straight hip at a corner, as a
/// prismoid's do; a corner sharper than 60 degrees has its hip cut off, so that the slope ends.
Beyond beyond(const SitePath& ring, SitePoint at) {
  Nearest best{{}, std::numeric_limits<double>::infinity(), 0};
  std::size_t edge = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Nearest here = nearest_on_segment(ring[i], ring[(i + 1) % ring.size()], at);
    if (here.distance_m < best.distance_m) best = here, edge = i;
  }
  const SitePoint from = ring[edge], to = ring[(edge + 1) % ring.size()];
  if (best.point != from && best.point != to) return {best.distance_m, best.point};
  const std::size_t corner = best.point == from ? edge : (edge + 1) % ring.size();
  const SitePoint before = ring[(corner + ring.size() - 1) % ring.size()], after = ring[(corner + 1) % ring.size()];
  const SiteVector out = at - best.point;
  const auto off_line_m = [&](SitePoint other) { return std::abs(cross(unit(other - best.point), out)); };
  return {std::max({off_line_m(before), off_line_m(after), best.distance_m / 2}), best.point};
}

/// Whether a wall's stretch lies across the way between two points, or the way begins or ends on it.
bool lies_across(SitePoint wall_from, SitePoint wall_to, SitePoint from, SitePoint to) {
  const SiteVector wall = wall_to - wall_from, way = to - from;
  const double from_side = cross(wall, from - wall_from), to_side = cross(wall, to - wall_from);
  const double start_side = cross(way, wall_from - from), end_side = cross(way, wall_to - from);
  return from_side * to_side <= 0 && start_side * end_side <= 0 && (from_side != 0 || to_side != 0);
}

/// Whether a point lies to the right of a path, at the place of the path that is nearest to it.
bool is_right_of(const SitePath& path, const Nearest& on, SitePoint at) {
  return dot(right_of(direction(pose_at(path, on.station_m).facing)), at - on.point) > 0;
}

}  // namespace

/// What a feature wants at a point: a level, and whether the point is on its level part, which it always spreads over.
struct Grading::Wanted {
  double level_m = 0;
  bool on_feature = false;
  SitePoint from;  ///< where its slope to the point begins
};

Grading::Grading(const LevelGrid& existing)
    : existing_{existing}, levels_{existing.values()}, visited_by_(existing.frame().cells(), 0) {}

void Grading::look_at(CellIndex cell) {
  if (!existing_.frame().contains(cell)) return;
  std::uint32_t& visited_by = visited_by_[existing_.frame().offset(cell)];
  if (std::exchange(visited_by, feature_) != feature_) open_.push_back(cell);
}

void Grading::grade(const RetainingWall& wall) { walls_.push_back(wall.path); }

/// Whether a wall stands between two points.
bool Grading::held_back(SitePoint from, SitePoint at) const {
  return std::ranges::any_of(walls_, [&](const SitePath& wall) {
    for (std::size_t i = 1; i < wall.size(); ++i)
      if (lies_across(wall[i - 1], wall[i], from, at)) return true;
    return false;
  });
}

void Grading::begin_along(const SitePath& path) {
  ++feature_;
  cells_along(existing_.frame(), path, [this](CellIndex cell) { look_at(cell); });
}

template <class WantedAt>
void Grading::spread(const WantedAt& wanted_at) {
  const GridFrame& frame = existing_.frame();
  while (!open_.empty()) {
    const CellIndex cell = open_.back();
    open_.pop_back();
    float& level_m = levels_[frame.offset(cell)];
    const Wanted wanted = wanted_at(frame.centre(cell), double(level_m));
    const float before_m = std::exchange(level_m, static_cast<float>(wanted.level_m));
    if (level_m == before_m && !wanted.on_feature) continue;
    if (!wanted.on_feature && !walls_.empty() && held_back(wanted.from, frame.centre(cell))) {
      level_m = before_m;
      continue;
    }
    for (int row = cell.row - 1; row <= cell.row + 1; ++row) {
      for (int column = cell.column - 1; column <= cell.column + 1; ++column) look_at({column, row});
    }
  }
}

void Grading::grade(const Pad& pad) {
  if (pad.outline.size() < 3) return;
  const SitePath& ring = pad.outline;
  begin_along(ring);
  cells_along(existing_.frame(), ring.back(), ring.front(), [this](CellIndex cell) { look_at(cell); });
  // A ring that runs wholly outside the grid either holds all of it or none.
  const CellIndex corner{0, 0};
  if (inside_ring(ring, existing_.frame().centre(corner))) look_at(corner);
  spread([&](SitePoint at, double level_m) -> Wanted {
    if (inside_ring(ring, at)) return {pad.level_m, true, at};
    const Beyond edge = beyond(ring, at);
    const double slope_m = rise_m(edge.run_m, pad.side_slope_ratio);
    return {std::clamp(level_m, pad.level_m - slope_m, pad.level_m + slope_m), false, edge.from};
  });
}

void Grading::grade(const Drive& drive) {
  const SitePath middle = with_fillets(drive.path, drive.corner_radius_m, curve_step_m);
  if (!drive.is_graded() || length(middle) <= 0) return;
  const LevelLine line = gentle_line(level_line({existing_.frame(), levels_}, middle), drive.greatest_grade_ratio);
  begin_along(middle);
  spread([&](SitePoint at, double level_m) -> Wanted {
    const Nearest on = nearest_on_path(middle, at);
    const double half_m = drive.width_m / 2, run_m = on.distance_m - half_m;
    const double off_m = std::min(on.distance_m, half_m);
    const double right_m = std::copysign(off_m, is_right_of(middle, on, at) ? 1.0 : -1.0);
    const double top_m = line.level_m(on.station_m) - drive.crown_ratio * off_m - drive.crossfall_ratio * right_m;
    if (run_m <= 0) return {top_m, true, at};
    const double slope_m = rise_m(run_m, drive.side_slope_ratio);
    return {std::clamp(level_m, top_m - slope_m, top_m + slope_m), false, on.point};
  });
}

void Grading::grade(const Swale& swale) {
  const double length_m = length(swale.path);
  if (length_m <= 0) return;
  const bool by_level = swale.inverts == SwaleInverts::by_level;
  const double start_m = by_level ? swale.start_level_m : level_at(existing_, swale.path.front()) - swale.start_depth_m;
  const double end_m = by_level ? swale.end_level_m : level_at(existing_, swale.path.back()) - swale.end_depth_m;
  begin_along(swale.path);
  spread([&](SitePoint at, double level_m) -> Wanted {
    const Nearest middle = nearest_on_path(swale.path, at);
    const double run_m = middle.distance_m - swale.bottom_width_m / 2;
    const double bottom_m = start_m + (end_m - start_m) * middle.station_m / length_m;
    return {std::min(level_m, bottom_m + rise_m(run_m, swale.side_slope_ratio)), run_m <= 0, middle.point};
  });
}

void Grading::grade(const Berm& berm) {
  if (length(berm.path) <= 0) return;
  begin_along(berm.path);
  spread([&](SitePoint at, double level_m) -> Wanted {
    const Nearest middle = nearest_on_path(berm.path, at);
    const double run_m = middle.distance_m - berm.top_width_m / 2;
    const double top_m = level_at(existing_, middle.point) + berm.height_m;
    return {std::max(level_m, top_m - rise_m(run_m, berm.side_slope_ratio)), run_m <= 0, middle.point};
  });
}

}  // namespace yardwright
