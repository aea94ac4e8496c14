// Rain to runoff for small catchments: NRCS curve number depth, time of concentration along a flow path, and the
// peak by the TR-55 graphical and the rational method. SI throughout; depths in metres over the catchment.
// Source: USDA NRCS, TR-55 "Urban Hydrology for Small Watersheds", 1986, chapters 2 to 4 and table F-1; FHWA HEC-22
// 4th ed., chapter 4. Page: docs/methods/drain.md.
#pragma once

#include <cstdint>
#include <span>
#include <string>

#include "geom/site/site.hpp"

namespace yardwright::drain {

/// A part of a catchment that has one cover and soil.
struct CoverPart {
  double area_m2 = 0;
  double curve_number = 0;
  double rational_c = 0;
  std::string cover;  ///< its name, as people read it
  SoilGroup soil = SoilGroup::c;
  bool operator==(const CoverPart&) const = default;
};

/// Area-weighted; 0 for no area.
double composite_curve_number(std::span<const CoverPart> parts);
double composite_rational_c(std::span<const CoverPart> parts);

/// A pervious curve number with an impervious share of which a part does not drain straight to the outlet.
double with_impervious(double pervious_curve_number, double impervious_ratio, double unconnected_ratio = 0);

/// (P - 0.2 S)^2 / (P + 0.8 S), 0 while the rain is less than 0.2 S. A curve number in (0, 100].
double runoff_depth_m(double rain_m, double curve_number);

/// Travel of sheet flow, of shallow concentrated flow and in a channel. A slope flatter than `least_slope_ratio` is
/// taken as that, so that level ground gives a long time and not an endless one.
inline constexpr double least_slope_ratio = 0.0005;
double sheet_flow_s(double sheet_n, double length_m, double slope_ratio, double two_year_rain_m);
double shallow_flow_m_per_s(double slope_ratio, bool paved);

enum class PeakState : std::uint8_t {
  computed,
  no_runoff,               ///< the rain stays under the initial abstraction
  curve_number_too_low,    ///< under 40, where TR-55 does not hold
  concentration_too_long,  ///< over 10 h, where TR-55 does not hold
  no_table                 ///< a storm of the site's own, for which TR-55 has no coefficients
};

struct GraphicalPeak {
  PeakState state = PeakState::no_runoff;
  double peak_m3_per_s = 0;
  double runoff_m = 0;
  double abstraction_ratio = 0;  ///< Ia / P before it is held within 0.1 to 0.5
  double concentration_s = 0;    ///< as used: at least 0.1 h
};

/// Ponds and swamps are taken as none (factor Fp 1).
GraphicalPeak graphical_peak(double area_m2, double curve_number, double rain_m, double concentration_s,
                             StormType type);

/// C i A; meant for less than 0.8 km2 (200 acres).
double rational_peak_m3_per_s(double rational_c, double intensity_m_per_s, double area_m2);

/// The greatest mean intensity that a storm of a known curve reaches over a duration of at least 0.1 h.
double greatest_intensity_m_per_s(const MassCurve& curve, double rain_m, double duration_s);

}  // namespace yardwright::drain
