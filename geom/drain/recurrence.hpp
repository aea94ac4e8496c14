// How often something happens that heavy rain brings about, from the depth-frequency table of a place, and its chance over
// years. Years are average intervals between rains that reach or pass a depth, as in NOAA Atlas 14, so that rains come as a
// Poisson process: the chance over L years is 1 - exp(-L / N) (from memory). Page: docs/methods/drain.md
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "geom/site/storm.hpp"

namespace yardwright::drain {

struct Recurrence {
  std::optional<double>
      at_most_years;  ///< of the least row of the table that brings it about; none: not even its rarest
  std::optional<double> at_least_years;  ///< of the row before, which does not; none: there is no such row
  bool operator==(const Recurrence&) const = default;
};

/// Asks `happens` with depths of the table; it must hold for every deeper rain too. The table must be known.
Recurrence recurrence_of(const RainTable& table, const std::function<bool(double rain_m)>& happens);

double chance_ratio(double every_years, double over_years);

/// "about once in 25 years, a chance of 70 % in 30 years".
std::string recurrence_words(const Recurrence& recurrence, double over_years);

}  // namespace yardwright::drain
