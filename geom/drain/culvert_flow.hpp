// What a round culvert carries: the lesser of what its inlet takes in and what its barrel lets through. Levels in metres
// in one datum; flow runs from start to end.
// Source: FHWA HDS-5, 2nd ed., 2001: inlet control by its regression forms, outlet control for a full barrel with friction
// by Manning. Limits: one barrel, round, no flow over the bank above it. Page: docs/methods/storm.md.
#pragma once

#include "geom/site/kinds/culvert.hpp"

namespace yardwright::drain {

struct CulvertBarrel {
  CulvertInlet inlet = CulvertInlet::metal_projecting;
  double diameter_m = 0;
  double length_m = 0;
  double start_invert_m = 0;
  double end_invert_m = 0;
  double roughness_n = 0.024;

  double slope_ratio() const { return length_m > 0 ? (start_invert_m - end_invert_m) / length_m : 0; }
};

/// Depth of water over the start's invert that the inlet asks for, to take in a flow.
double inlet_headwater_m(const CulvertBarrel& barrel, double flow_m3_per_s);

/// Fall that a full barrel asks for: entry, friction and exit.
double full_barrel_loss_m(const CulvertBarrel& barrel, double flow_m3_per_s);

/// Carried with water at these levels at its start and its end; nothing against its direction.
double culvert_m3_per_s(const CulvertBarrel& barrel, double start_level_m, double end_level_m);

}  // namespace yardwright::drain
