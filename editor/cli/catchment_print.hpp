// The catchments of a yard's pits, culverts and inlets as `drain` and `check` tell them: for reading, and as JSON in SI.
#pragma once

#include <nlohmann/json.hpp>

#include "geom/drain/drain.hpp"
#include "geom/drain/pipe_catchments.hpp"

namespace yardwright::cli {

void print_catchments(const Site& site, const drain::Answer& answer, const std::vector<drain::PipeCatchment>& pipes);

/// What is not known is null.
nlohmann::ordered_json pits_as_json(const drain::Answer& answer);
nlohmann::ordered_json pipes_as_json(const std::vector<drain::PipeCatchment>& pipes);

}  // namespace yardwright::cli
