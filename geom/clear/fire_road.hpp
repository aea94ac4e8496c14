// Whether a fire engine finds a drive wide enough. Many states exempt farm buildings, so it is advice.
#pragma once

#include <optional>

#include "geom/site/finding.hpp"
#include "geom/site/rule.hpp"

namespace yardwright::clear {

/// Of the widest drive; nothing where no drive is drawn.
std::optional<Finding> fire_road_finding(const Site& site, const RuleBook& rules);

}  // namespace yardwright::clear
