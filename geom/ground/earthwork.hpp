// Earth to be moved between two surfaces, in cubic metres in place (neither swell nor shrinkage), and the volumes
// of old practice from areas of sections or contours. Raster difference: each cell is a prism on its centre's
// level. docs/methods/ground.md
#pragma once

#include <vector>

#include "geom/ground/design_surface.hpp"

namespace yardwright {

struct Earthwork {
  double cut_m3 = 0;   ///< taken away, never negative
  double fill_m3 = 0;  ///< brought in, never negative
  double cut_area_m2 = 0;
  double fill_area_m2 = 0;
  bool operator==(const Earthwork&) const = default;

  /// Positive where earth is left over, negative where it must be hauled in.
  double left_over_m3() const { return cut_m3 - fill_m3; }
};

/// Of two grids of one frame; nothing of empty ones.
Earthwork earthwork(const LevelGrid& existing, const LevelGrid& design);
Earthwork earthwork(const DesignSurface& surface);

/// The average end area method: areas of sections at equal spacings.
double average_end_area_volume_m3(const std::vector<double>& areas_m2, double spacing_m);

/// Between two contours of these areas: the frustum of a cone, H/3 (A1 + A2 + sqrt(A1 A2)).
double conic_volume_m3(double lower_area_m2, double upper_area_m2, double height_m);

}  // namespace yardwright
