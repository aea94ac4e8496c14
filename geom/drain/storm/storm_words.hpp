// What is said of a storm, in one place for window, sheets and command line.
#pragma once

#include <optional>
#include <string>

#include "geom/drain/storm/storm.hpp"

namespace yardwright::drain::storm {

/// "everything works", "the pump of Dump fails".
std::string mishap_words(const Site& site, const StormOptions& options);

/// "hour 11.6" of the storm.
std::string hour_words(double time_s);

/// What did not come about within the hours that ran may still come after them: "not by hour 14.0".
std::string hour_words(std::optional<double> time_s, double end_s);

}  // namespace yardwright::drain::storm
