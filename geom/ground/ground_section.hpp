// The ground cut along a line: existing and design levels at stations along it, a cell of the grid apart, with a point at
// every corner. Chainage in metres from the line's first point; levels in metres above the ground's datum, linear between
// points. Beyond the known ground a point has no level. docs/methods/ground.md
#pragma once

#include <optional>
#include <vector>

#include "geom/ground/design_surface.hpp"

namespace yardwright {

struct SectionLevels {
  double existing_m = 0;
  double design_m = 0;
};

struct SectionPoint {
  double chainage_m = 0;
  SitePoint at;
  std::optional<SectionLevels> levels;  ///< nothing beyond the known ground
};

struct GroundSection {
  std::vector<SectionPoint> points;  ///< two or more, or none

  double length_m() const { return points.empty() ? 0 : points.back().chainage_m; }
};

/// No points where the path has no length.
GroundSection ground_section(const DesignSurface& surface, const SitePath& path);

/// Nothing beyond the line's ends or the known ground.
std::optional<SectionLevels> levels_at(const GroundSection& section, double chainage_m);

}  // namespace yardwright
