// The yard that a verb works on: read from its file, as it stands once a phase is built.
#pragma once

#include <optional>
#include <string>

#include "geom/site/site.hpp"
#include "geom/units/problem.hpp"

namespace yardwright::cli {

/// Without a phase the yard as drawn, all phases at once; a phase that the yard has not is refused.
Expected<Site> site_at(const std::string& file, std::optional<int> phase);

}  // namespace yardwright::cli
