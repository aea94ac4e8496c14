#include "geom/ground/level_line.hpp"

#include <algorithm>
#include <cmath>

#include "geom/shape/path.hpp"

namespace yardwright {

namespace {

constexpr double most_samples = 20'000;  // of a line far longer than any ground

/// Raises (toward = max) or lowers (min) what is steeper than `step_m` from sample to sample.
template <class Toward>
std::vector<double> bounded(std::vector<double> levels_m, double step_m, Toward toward) {
  for (std::size_t i = 1; i < levels_m.size(); ++i) levels_m[i] = toward(levels_m[i], levels_m[i - 1] - step_m);
  for (std::size_t i = levels_m.size() - 1; i > 0; --i) levels_m[i - 1] = toward(levels_m[i - 1], levels_m[i] - step_m);
  return levels_m;
}

/// Lines of the grade through both ends leave this room; what of the ground lies outside it cannot be kept.
void tie_ends(LevelLine& line, double grade_ratio) {
  const double first_m = line.levels_m.front(), last_m = line.levels_m.back(), length_m = line.length_m();
  const double too_much_m = std::max(0.0, std::abs(last_m - first_m) - grade_ratio * length_m) / 2;
  const double start_m = first_m + std::copysign(too_much_m, last_m - first_m),
               end_m = last_m - std::copysign(too_much_m, last_m - first_m);
  for (std::size_t i = 0; i < line.levels_m.size(); ++i) {
    const double from_start_m = grade_ratio * line.spacing_m * static_cast<double>(i),
                 from_end_m = grade_ratio * length_m - from_start_m;
    const double low_m = std::max(start_m - from_start_m, end_m - from_end_m);
    const double high_m = std::min(start_m + from_start_m, end_m + from_end_m);
    line.levels_m[i] = std::clamp(line.levels_m[i], std::min(low_m, high_m), std::max(low_m, high_m));
  }
}

}  // namespace

double LevelLine::level_m(double station_m) const {
  const double last = static_cast<double>(levels_m.size()) - 1;
  const double at = std::clamp(station_m / spacing_m, 0.0, last);
  const auto before = static_cast<std::size_t>(std::min(at, last - 1));
  return std::lerp(levels_m[before], levels_m[before + 1], at - static_cast<double>(before));
}

LevelLine level_line(const LevelGrid& ground, const SitePath& path) {
  const double length_m = length(path);
  const double gaps = std::clamp(std::ceil(length_m / ground.frame().cell_m), 1.0, most_samples);
  LevelLine line{length_m / gaps, {}};
  for (double i = 0; i <= gaps; ++i) line.levels_m.push_back(level_at(ground, pose_at(path, i * line.spacing_m).at));
  return line;
}

LevelLine gentle_line(LevelLine ground, double greatest_grade_ratio) {
  tie_ends(ground, greatest_grade_ratio);
  const double step_m = greatest_grade_ratio * ground.spacing_m;
  const auto filled_m = bounded(ground.levels_m, step_m, [](double a, double b) { return std::max(a, b); });
  const auto cut_m = bounded(ground.levels_m, -step_m, [](double a, double b) { return std::min(a, b); });
  for (std::size_t i = 0; i < ground.levels_m.size(); ++i) ground.levels_m[i] = (filled_m[i] + cut_m[i]) / 2;
  return ground;
}

}  // namespace yardwright
