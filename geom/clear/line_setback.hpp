// Every solid thing against every overhead line: bins by the fill port, legs and conveyors by their top, roofs
// that a line passes over. The ground under the line may lie higher or lower than at the bin: the design surface
// tells. The utility decides, and the words say so.
#pragma once

#include "geom/clear/gap.hpp"

namespace yardwright::clear {

std::vector<Check> line_checks(const Yard& yard);

/// The highest point at which the thing is filled or probed, above the ground at it; nothing where it has none.
std::optional<double> port_height_m(const Thing& thing, const RuleBook& rules);

/// The most that any of the checks asks between a thing and the line, on the plan, where the ground at the thing lies no
/// more than `over_m` above that under the line.
double most_asked_m(const Thing& thing, const OverheadLine& line, double over_m, const RuleBook& rules);

}  // namespace yardwright::clear
