#include "geom/ground/earthwork.hpp"

#include <cassert>
#include <cmath>

namespace yardwright {

Earthwork earthwork(const LevelGrid& existing, const LevelGrid& design) {
  if (existing.same_data(design)) return {};
  assert(existing.frame() == design.frame());
  Earthwork sum;
  const double cell_m2 = existing.frame().cell_area_m2();
  for (std::size_t i = 0; i < existing.frame().cells(); ++i) {
    const double raised_m = double(design.values()[i]) - double(existing.values()[i]);
    if (raised_m == 0) continue;
    (raised_m > 0 ? sum.fill_m3 : sum.cut_m3) += std::abs(raised_m) * cell_m2;
    (raised_m > 0 ? sum.fill_area_m2 : sum.cut_area_m2) += cell_m2;
  }
  return sum;
}

Earthwork earthwork(const DesignSurface& surface) { return earthwork(surface.existing, surface.design); }

double average_end_area_volume_m3(const std::vector<double>& areas_m2, double spacing_m) {
  double sum_m3 = 0;
  for (std::size_t i = 1; i < areas_m2.size(); ++i) sum_m3 += (areas_m2[i - 1] + areas_m2[i]) / 2 * spacing_m;
  return sum_m3;
}

double conic_volume_m3(double lower_area_m2, double upper_area_m2, double height_m) {
  return height_m / 3 * (lower_area_m2 + upper_area_m2 + std::sqrt(lower_area_m2 * upper_area_m2));
}

}  // namespace yardwright
