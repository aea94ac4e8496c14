// A yard's phases on the command line: as a table and lines for people, and as JSON.
#pragma once

#include <string>

#include "geom/grow/phases.hpp"

namespace yardwright::cli {

/// The whole site, for the names of what is gone by then.
void print_text(const grow::PhasePlan& plan, const Site& whole);
void print_json(const grow::PhasePlan& plan, const Site& whole, const std::string& picture);

/// After the first phase.
bool fails_newly(const grow::PhasePlan& plan);

}  // namespace yardwright::cli
