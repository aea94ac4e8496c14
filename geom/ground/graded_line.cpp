#include "geom/ground/graded_line.hpp"

#include <cmath>
#include <numbers>

namespace yardwright {

namespace {

constexpr double level_ratio = 1e-6;       // what rises less is level
constexpr std::size_t most_points = 2000;  // a line that goes round and round ends

/// Which way a line goes on from a point; nothing where it cannot.
using Way = std::function<std::optional<SiteVector>(SitePoint)>;

/// By the direction at the middle of each step.
SitePath traced(SitePoint from, double step_m, const Way& way, const std::function<bool(SitePoint)>& goes_on) {
  SitePath path{from};
  while (path.size() < most_points) {
    const auto first = way(path.back());
    if (!first) break;
    const auto middle = way(path.back() + *first * (step_m / 2));
    if (!middle) break;
    const SitePoint next = path.back() + *middle * step_m;
    if (!goes_on(next)) break;
    path.push_back(next);
  }
  return path;
}

}  // namespace

SiteVector rise_at(const LevelGrid& ground, SitePoint at, double around_m) {
  constexpr int points = 16;
  SiteVector sum;
  for (int i = 0; i < points; ++i) {
    const double angle = 2 * std::numbers::pi * i / points;
    const SiteVector out{std::cos(angle), std::sin(angle)};
    sum = sum + out * level_at(ground, at + out * around_m);
  }
  return sum * (2 / (points * around_m));
}

SitePath line_across(const LevelGrid& ground, SitePoint from, const LineAcross& line,
                     const std::function<bool(SitePoint)>& goes_on) {
  const auto way = [&](SitePoint at) -> std::optional<SiteVector> {
    const SiteVector rise = rise_at(ground, at, line.around_m);
    const double down_share = line.fall_ratio / length(rise);
    if (!(std::abs(down_share) < 1)) return std::nullopt;
    const SiteVector down = -unit(rise), aside = line.hand == Hand::left ? left_of(down) : right_of(down);
    return aside * std::sqrt(1 - down_share * down_share) + down * down_share;
  };
  return traced(from, line.step_m, way, goes_on);
}

SitePath line_down(const LevelGrid& ground, SitePoint from, const LineAcross& line,
                   const std::function<bool(SitePoint)>& goes_on) {
  const auto way = [&](SitePoint at) -> std::optional<SiteVector> {
    const SiteVector rise = rise_at(ground, at, line.around_m);
    if (length(rise) < level_ratio) return std::nullopt;
    return -unit(rise);
  };
  return traced(from, line.step_m, way, goes_on);
}

}  // namespace yardwright
