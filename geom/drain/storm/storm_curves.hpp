// A storm through its hours, as curves over the times of its samples: water over the floor of each pit, what comes into
// pits and is pumped out of them, what pipes and grates carry, what leaves over the edge of the ground. Metres over a
// pit's floor, m3/s. Page: docs/methods/storm.md
#pragma once

#include "geom/drain/storm/storm.hpp"

namespace yardwright::drain::storm {

enum class CurvesOf : std::uint8_t { pit_depths, pit_flows, pipe_flows, leaving };
constexpr std::array<std::string_view, 4> names_of(CurvesOf) {
  return {"pit-depths", "pit-flows", "pipe-flows", "leaving"};
}

struct StormCurve {
  std::string name;
  std::vector<double> values;        ///< at the story's times
  std::optional<double> rim_height;  ///< of a pit, over its floor
  double most() const;
};

std::vector<StormCurve> storm_curves(const Site& site, const StormStory& story, CurvesOf what);

Quantity quantity_of(CurvesOf what);

}  // namespace yardwright::drain::storm
