// Whether an empty pit stays down in groundwater: the weight of its concrete, and of the soil on a toe around its floor,
// against the water it displaces. Without friction on its walls and without what stands on footings of its own. Metres,
// newtons; the ground level at the pit. A check before a licensed engineer's design, not in its place.
// Method: buoyancy; a toe carries the soil over it, moist above the water and buoyant below. Page: docs/methods/storm.md
#pragma once

namespace yardwright::drain {

/// A pit of concrete, open at its top, that reaches from the ground down.
struct PitShell {
  double inside_width_m = 0;
  double inside_length_m = 0;
  double base_depth_m = 0;  ///< underside of its floor, below the ground
  double wall_m = 0;
  double floor_m = 0;
  double toe_m = 0;  ///< by which the floor reaches out on every side
};

struct SoilAndWater {
  double water_depth_m = 0;          ///< of the groundwater, below the ground
  double concrete_kg_per_m3 = 2403;  ///< 150 lb/ft3
  double soil_kg_per_m3 = 1922;      ///< 120 lb/ft3, moist
  double water_kg_per_m3 = 999.55;   ///< 62.4 lb/ft3
};

struct Uplift {
  double weight_n = 0;  ///< of concrete
  double toe_n = 0;     ///< of the soil on the toe
  double uplift_n = 0;
  /// Over 1 it stays down; infinite where the water stays under its base.
  double safety_ratio() const;
};

/// The pit must be deeper than its floor is thick.
Uplift uplift_of(const PitShell& pit, const SoilAndWater& ground);

/// The highest groundwater, below the ground, at which the empty pit has that safety; 0 where it has it in water up to
/// the ground.
double highest_water_depth_m(const PitShell& pit, SoilAndWater ground, double safety_ratio);

}  // namespace yardwright::drain
