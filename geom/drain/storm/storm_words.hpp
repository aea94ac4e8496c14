// What is said of a storm, in one place for window, sheets and command line.
#pragma once

#include <string>

#include "geom/drain/storm/storm.hpp"

namespace yardwright::drain::storm {

/// "everything works", "the pump of Dump fails".
std::string mishap_words(const Site& site, const StormOptions& options);

/// "hour 11.6" of the storm.
std::string hour_words(double time_s);

}  // namespace yardwright::drain::storm
