#include "geom/drain/uplift.hpp"

#include <algorithm>
#include <cassert>
#include <limits>

namespace yardwright::drain {

namespace {

constexpr double gravity_m_per_s2 = 9.80665;

}  // namespace

double Uplift::safety_ratio() const {
  return uplift_n > 0 ? (weight_n + toe_n) / uplift_n : std::numeric_limits<double>::infinity();
}

Uplift uplift_of(const PitShell& pit, const SoilAndWater& ground) {
  assert(pit.base_depth_m > pit.floor_m);
  const double width_m = pit.inside_width_m + 2 * pit.wall_m, length_m = pit.inside_length_m + 2 * pit.wall_m;
  const double wall_height_m = pit.base_depth_m - pit.floor_m;
  const double base_m2 = (width_m + 2 * pit.toe_m) * (length_m + 2 * pit.toe_m);
  const double walls_m3 = (width_m * length_m - pit.inside_width_m * pit.inside_length_m) * wall_height_m;
  const double toe_m2 = base_m2 - width_m * length_m;
  const double wet_m = std::max(0.0, pit.base_depth_m - ground.water_depth_m);
  const double wet_soil_m = std::clamp(wall_height_m - ground.water_depth_m, 0.0, wall_height_m);
  const double soil_kg_per_m2 = (wall_height_m - wet_soil_m) * ground.soil_kg_per_m3 +
                                wet_soil_m * (ground.soil_kg_per_m3 - ground.water_kg_per_m3);
  // Water lifts the shell by what it displaces, and the toe's slab like the rest of the floor.
  const double displaced_m3 = width_m * length_m * wet_m + toe_m2 * std::min(wet_m, pit.floor_m);
  return {gravity_m_per_s2 * ground.concrete_kg_per_m3 * (walls_m3 + base_m2 * pit.floor_m),
          gravity_m_per_s2 * toe_m2 * soil_kg_per_m2, gravity_m_per_s2 * ground.water_kg_per_m3 * displaced_m3};
}

double highest_water_depth_m(const PitShell& pit, SoilAndWater ground, double safety_ratio) {
  double high_m = 0, low_m = pit.base_depth_m;
  ground.water_depth_m = 0;
  if (uplift_of(pit, ground).safety_ratio() >= safety_ratio) return 0;
  for (int i = 0; i < 60; ++i) {
    ground.water_depth_m = (high_m + low_m) / 2;
    (uplift_of(pit, ground).safety_ratio() >= safety_ratio ? low_m : high_m) = ground.water_depth_m;
  }
  return low_m;
}

}  // namespace yardwright::drain
