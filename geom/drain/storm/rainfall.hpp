// The rain of a storm over its 24 hours, and what of it runs off each cover, as depths fallen since the beginning.
// NRCS curve numbers used on the cumulative rain and differenced (National Engineering Handbook 630, chapter 10, from
// memory): what has soaked in stays, and water that comes from elsewhere does not soak in again.
#pragma once

#include <optional>

#include "geom/site/catalog/catalogs.hpp"
#include "geom/site/site.hpp"

namespace yardwright::drain::storm {

inline constexpr double storm_length_s = 24 * 3600;

class Rainfall {
 public:
  /// Nothing for a distribution that is not known.
  static std::optional<Rainfall> of(const Storm& storm, const Catalogs& catalogs);

  double fallen_m(double since_start_s) const;
  double run_off_m(double since_start_s, double curve_number) const;
  /// The beginning of the span of a length in which most rain falls.
  double heaviest_start_s(double length_s) const;

 private:
  Rainfall(double rain_m, MassCurve curve) : rain_m_{rain_m}, curve_{std::move(curve)} {}

  double rain_m_;
  MassCurve curve_;
};

}  // namespace yardwright::drain::storm
