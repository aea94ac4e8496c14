// The story of a storm as a table for a spreadsheet: every sample a row, levels and flows of every pit, culvert and of
// the edge of the ground. SI, its units in the head of each column. CSV as RFC 4180 has it.
#pragma once

#include <string>

#include "geom/drain/storm/storm.hpp"

namespace yardwright::drain::storm {

std::string hydrographs_csv(const Site& site, const StormStory& story);

}  // namespace yardwright::drain::storm
