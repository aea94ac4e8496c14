// The yard that a verb works on: read from its file, as it stands once a phase is built.
#pragma once

#include <optional>
#include <string>

#include "geom/site/site.hpp"
#include "geom/units/problem.hpp"

namespace yardwright::cli {

/// Without a phase the yard as drawn, all phases at once; a phase that the yard has not is refused.
Expected<Site> site_at(const std::string& file, std::optional<int> phase);

/// The same, and what the yard builds after that phase; nothing of the yard as drawn.
struct SiteInTime {
  Site site;
  std::vector<Item> later;
};
Expected<SiteInTime> site_in_time(const std::string& file, std::optional<int> phase);

}  // namespace yardwright::cli
