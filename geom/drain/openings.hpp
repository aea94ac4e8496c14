// What runs over rims and through holes: weirs, orifices and grates, by head. SI; weir coefficients without dimension,
// Q = Cw L sqrt(2 g) h^1.5. Source: FHWA HEC-22 4th ed., chapters 7 and 10. Page: docs/methods/storm.md.
#pragma once

namespace yardwright::drain {

inline constexpr double sharp_weir_ratio = 0.37;     ///< a curb
inline constexpr double broad_weir_ratio = 0.33;     ///< a sill 2 to 15 ft broad
inline constexpr double square_orifice_ratio = 0.6;  ///< a square edge

/// Over a level edge; a head of 0 or less gives nothing.
double weir_m3_per_s(double coefficient_ratio, double length_m, double head_m);

/// Of the free flow, with the water on the far side standing over the edge too: 1 while it does not, 0 once it is level.
double drowned_weir_ratio(double head_m, double far_head_m);

/// Through a hole wholly under water, by the head over its centre, or between the levels on its two sides.
double orifice_m3_per_s(double coefficient_ratio, double area_m2, double head_m);

/// A grate in a sag: all its sides are edges until the bars hold the water back.
struct Grate {
  double width_m = 0;
  double length_m = 0;
  double open_ratio = 0.5;     ///< clear area of the whole
  double working_ratio = 1.0;  ///< of edge and area that is not clogged
};

/// The lesser of what its edges and its openings take.
double grate_m3_per_s(const Grate& grate, double depth_m);

}  // namespace yardwright::drain
