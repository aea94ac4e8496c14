// Coefficients of the TR-55 graphical peak: log10 of the unit peak (cfs a square mile and inch) is
// C0 + C1 log10 Tc + C2 (log10 Tc)^2, Tc in hours. Source: TR-55 table F-1 (read second-hand in a public listing of a
// federal model that names the table).
#pragma once

#include <span>

#include "geom/site/site.hpp"

namespace yardwright::drain {

struct UnitPeakRow {
  double abstraction_ratio;  ///< Ia / P
  double c0, c1, c2;
};

/// Rows of a storm type in rising Ia / P, first 0.10 and last 0.50.
std::span<const UnitPeakRow> unit_peak_rows(StormType type);

/// Type II 24-hour mass curve at each tenth of an hour, 0 to 24 h.
std::span<const double> type_ii_mass_curve();

}  // namespace yardwright::drain
