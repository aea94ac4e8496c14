#include "geom/drain/runoff.hpp"

#include <algorithm>
#include <cmath>

#include "geom/drain/tr55_table.hpp"

namespace yardwright::drain {

namespace {

constexpr double ft = 0.3048;
constexpr double inch = 0.0254;
constexpr double mile = 5280 * ft;
constexpr double hour = 3600;

double weighted(std::span<const CoverPart> parts, double CoverPart::*value) {
  double area_m2 = 0, sum = 0;
  for (const CoverPart& part : parts) {
    area_m2 += part.area_m2;
    sum += part.area_m2 * (part.*value);
  }
  return area_m2 > 0 ? sum / area_m2 : 0;
}

/// Potential retention S after runoff begins.
double retention_m(double curve_number) { return (1000 / curve_number - 10) * inch; }

/// The row of an Ia/P, its three coefficients interpolated as TR-55 does.
UnitPeakRow row_at(StormType type, double abstraction_ratio) {
  const auto rows = unit_peak_rows(type);
  const double ratio = std::clamp(abstraction_ratio, rows.front().abstraction_ratio, rows.back().abstraction_ratio);
  std::size_t above = 1;
  while (above + 1 < rows.size() && rows[above].abstraction_ratio < ratio) ++above;
  const UnitPeakRow &a = rows[above - 1], &b = rows[above];
  const double part = (ratio - a.abstraction_ratio) / (b.abstraction_ratio - a.abstraction_ratio);
  return {ratio, std::lerp(a.c0, b.c0, part), std::lerp(a.c1, b.c1, part), std::lerp(a.c2, b.c2, part)};
}

/// m3/s for each m2 of catchment and m of runoff.
double unit_peak_per_s(const UnitPeakRow& row, double concentration_s) {
  const double log_h = std::log10(concentration_s / hour);
  const double cfs_per_square_mile_inch = std::pow(10, row.c0 + row.c1 * log_h + row.c2 * log_h * log_h);
  return cfs_per_square_mile_inch * ft * ft * ft / (mile * mile * inch);
}

}  // namespace

double composite_curve_number(std::span<const CoverPart> parts) { return weighted(parts, &CoverPart::curve_number); }
double composite_rational_c(std::span<const CoverPart> parts) { return weighted(parts, &CoverPart::rational_c); }

double with_impervious(double pervious_curve_number, double impervious_ratio, double unconnected_ratio) {
  return pervious_curve_number + impervious_ratio * (98 - pervious_curve_number) * (1 - 0.5 * unconnected_ratio);
}

double runoff_depth_m(double rain_m, double curve_number) {
  const double s_m = retention_m(curve_number);
  const double beyond_m = rain_m - 0.2 * s_m;
  return beyond_m > 0 ? beyond_m * beyond_m / (beyond_m + s_m) : 0;
}

// TR-55 eq. 3-3: T (h) = 0.007 (n L)^0.8 / (P2^0.5 s^0.4), L in ft and P2 in inches.
double sheet_flow_s(double sheet_n, double length_m, double slope_ratio, double two_year_rain_m) {
  const double slope = std::max(slope_ratio, least_slope_ratio);
  return 0.007 * hour * std::pow(sheet_n * length_m / ft, 0.8) /
         (std::sqrt(two_year_rain_m / inch) * std::pow(slope, 0.4));
}

// TR-55 appendix F: V (ft/s) = 16.1345 sqrt(s) unpaved (read second-hand), 20.3282 sqrt(s) paved (from memory).
double shallow_flow_m_per_s(double slope_ratio, bool paved) {
  return (paved ? 20.3282 : 16.1345) * ft * std::sqrt(std::max(slope_ratio, least_slope_ratio));
}

GraphicalPeak graphical_peak(double area_m2, double curve_number, double rain_m, double concentration_s,
                             StormType type) {
  constexpr double shortest_s = 0.1 * hour, longest_s = 10 * hour;
  GraphicalPeak peak;
  peak.runoff_m = runoff_depth_m(rain_m, curve_number);
  peak.concentration_s = std::max(concentration_s, shortest_s);
  if (peak.runoff_m <= 0) return peak;
  peak.abstraction_ratio = 0.2 * retention_m(curve_number) / rain_m;
  if (type == StormType::own)
    peak.state = PeakState::no_table;
  else if (curve_number < 40)
    peak.state = PeakState::curve_number_too_low;
  else if (concentration_s > longest_s)
    peak.state = PeakState::concentration_too_long;
  else {
    peak.state = PeakState::computed;
    peak.peak_m3_per_s =
        unit_peak_per_s(row_at(type, peak.abstraction_ratio), peak.concentration_s) * area_m2 * peak.runoff_m;
  }
  return peak;
}

double rational_peak_m3_per_s(double rational_c, double intensity_m_per_s, double area_m2) {
  return rational_c * intensity_m_per_s * area_m2;
}

// The mean over a window is greatest where the window starts or ends at a point of the piecewise straight curve.
double greatest_intensity_m_per_s(const MassCurve& curve, double rain_m, double duration_s) {
  const double window_s = std::clamp(duration_s, 0.1 * hour, 24 * hour);
  double most = 0;
  for (const MassPoint& point : curve.points) {
    most = std::max({most, curve.fallen_ratio(point.time_s + window_s) - point.fallen_ratio,
                     point.fallen_ratio - curve.fallen_ratio(point.time_s - window_s)});
  }
  return most * rain_m / window_s;
}

}  // namespace yardwright::drain
