#include "geom/ground/ground_section.hpp"

#include <algorithm>
#include <cmath>

namespace yardwright {

namespace {

constexpr double most_points = 20'000;  // of a line far longer than any ground

bool covers(const GridFrame& frame, SitePoint at) {
  const SiteVector in = at - frame.south_west;
  return in.x >= 0 && in.y >= 0 && in.x <= frame.columns * frame.cell_m && in.y <= frame.rows * frame.cell_m;
}

std::optional<SectionLevels> levels_of(const DesignSurface& surface, SitePoint at) {
  if (!surface.known() || !covers(surface.design.frame(), at)) return std::nullopt;
  return SectionLevels{surface.existing_level_m(at), surface.level_m(at)};
}

/// Evenly spaced from `from`, which is left out, to `to`.
void add_leg(GroundSection& section, const DesignSurface& surface, SitePoint to, double spacing_m) {
  const SitePoint from = section.points.back().at;
  const double start_m = section.length_m(), leg_m = distance(from, to);
  const double gaps = std::ceil(leg_m / spacing_m - 1e-9);
  for (double i = 1; i <= gaps; ++i) {
    const SitePoint at = between(from, to, i / gaps);
    section.points.push_back({start_m + leg_m * i / gaps, at, levels_of(surface, at)});
  }
}

}  // namespace

GroundSection ground_section(const DesignSurface& surface, const SitePath& path) {
  GroundSection section;
  const double whole_m = length(path);
  if (!(whole_m > 0)) return section;
  const double cell_m = surface.known() ? surface.design.frame().cell_m : 1;
  section.points.push_back({0, path.front(), levels_of(surface, path.front())});
  for (const SitePoint to : path) add_leg(section, surface, to, std::max(cell_m, whole_m / most_points));
  return section;
}

std::optional<SectionLevels> levels_at(const GroundSection& section, double chainage_m) {
  const auto& points = section.points;
  if (points.empty() || chainage_m < 0 || chainage_m > section.length_m()) return std::nullopt;
  const auto after = std::ranges::lower_bound(points, chainage_m, {}, &SectionPoint::chainage_m);
  if (after->chainage_m == chainage_m) return after->levels;
  const auto before = after - 1;
  if (!before->levels || !after->levels) return std::nullopt;
  const double part = (chainage_m - before->chainage_m) / (after->chainage_m - before->chainage_m);
  return SectionLevels{std::lerp(before->levels->existing_m, after->levels->existing_m, part),
                       std::lerp(before->levels->design_m, after->levels->design_m, part)};
}

}  // namespace yardwright
