#include "geom/ground/fall.hpp"

#include <cmath>

namespace yardwright {

namespace {

/// Sums of a least-squares plane, taken from the place and a level near it so that nothing is lost to rounding.
struct Sums {
  double n = 0, x = 0, y = 0, z = 0, xx = 0, xy = 0, yy = 0, xz = 0, yz = 0, zz = 0;

  void take(double east_m, double north_m, double level_m) {
    n += 1;
    x += east_m;
    y += north_m;
    z += level_m;
    xx += east_m * east_m;
    xy += east_m * north_m;
    yy += north_m * north_m;
    xz += east_m * level_m;
    yz += north_m * level_m;
    zz += level_m * level_m;
  }
};

std::optional<Fall> fall_of(const Sums& s) {
  const double xx = s.xx - s.x * s.x / s.n, xy = s.xy - s.x * s.y / s.n, yy = s.yy - s.y * s.y / s.n;
  const double xz = s.xz - s.x * s.z / s.n, yz = s.yz - s.y * s.z / s.n, zz = s.zz - s.z * s.z / s.n;
  const double spread = xx * yy - xy * xy;
  if (!(spread > 1e-9 * xx * yy)) return std::nullopt;
  const SiteVector rise{(xz * yy - yz * xy) / spread, (yz * xx - xz * xy) / spread};
  const double off_plane = zz - rise.x * xz - rise.y * yz;
  return Fall{unit(-rise), length(rise), std::sqrt(std::max(0.0, off_plane) / s.n)};
}

}  // namespace

std::optional<Fall> fall_at(const LevelGrid& levels, SitePoint at, double radius_m) {
  if (levels.empty()) return std::nullopt;
  const GridFrame& frame = levels.frame();
  const CellIndex low = frame.cell_of(at - SiteVector{radius_m, radius_m}),
                  high = frame.cell_of(at + SiteVector{radius_m, radius_m});
  if (!frame.contains(low) || !frame.contains(high)) return std::nullopt;
  const auto about_m = static_cast<double>(levels.at(frame.cell_of(at)));
  Sums sums;
  for (int row = low.row; row <= high.row; ++row) {
    for (int column = low.column; column <= high.column; ++column) {
      const SiteVector out = frame.centre({column, row}) - at;
      if (length(out) <= radius_m) sums.take(out.x, out.y, static_cast<double>(levels.at({column, row})) - about_m);
    }
  }
  constexpr double fewest_cells = 4;
  return sums.n < fewest_cells ? std::nullopt : fall_of(sums);
}

double mean_grade(const LevelGrid& levels) {
  if (levels.empty()) return 0;
  const GridFrame& frame = levels.frame();
  const auto& level_m = levels.values();
  const auto wide = static_cast<std::size_t>(frame.columns);
  double sum = 0, count = 0;
  for (std::size_t row = 0; row + 1 < static_cast<std::size_t>(frame.rows); ++row) {
    for (std::size_t i = row * wide; i + 1 < (row + 1) * wide; ++i, ++count) {
      const double here = level_m[i];
      sum += std::hypot(level_m[i + 1] - here, level_m[i + wide] - here);
    }
  }
  return count > 0 ? sum / count / frame.cell_m : 0;
}

}  // namespace yardwright
