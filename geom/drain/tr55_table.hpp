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

/// Rows of an NRCS storm type in rising Ia / P, first 0.10 and last 0.50; none of a storm of the site's own.
std::span<const UnitPeakRow> unit_peak_rows(StormType type);

}  // namespace yardwright::drain
