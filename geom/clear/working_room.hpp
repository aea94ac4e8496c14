// Free ground in front of what people work at: the fan and the unload tube of a bin, the end of a dryer, a boot in
// its pit. The room is a strip as wide as the rule book says, measured outward from the wall.
#pragma once

#include <limits>

#include "geom/clear/gap.hpp"

namespace yardwright::clear {

inline constexpr double nothing_in_front = std::numeric_limits<double>::infinity();

/// How far a strip of a width runs from `face`, the way that it looks, until it meets the outline.
double free_depth_m(const Pose& face, double width_m, const Outline& outline);

std::vector<Check> room_checks(const RuleBook& rules);

}  // namespace yardwright::clear
