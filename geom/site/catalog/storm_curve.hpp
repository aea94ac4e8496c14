// How the rain of an NRCS 24-hour storm falls over its day.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "geom/site/storm.hpp"

namespace yardwright {

struct StormCurve {
  StormType type = StormType::ii;
  MassCurve curve;
  std::string source;
  bool operator==(const StormCurve&) const = default;
};

/// The storm's own curve or the catalogue's of its type; one that is not known where there is none.
inline MassCurve curve_of(StormType type, const MassCurve& own, const std::vector<StormCurve>& catalog) {
  if (type == StormType::own) return own;
  const auto found = std::ranges::find(catalog, type, &StormCurve::type);
  return found == catalog.end() ? MassCurve{} : found->curve;
}

}  // namespace yardwright
