// Kind to kind, wall to wall: bins, dryers, dwellings, wells, tanks, and nothing on top of anything else.
#pragma once

#include "geom/clear/gap.hpp"

namespace yardwright::clear {

/// Nothing stands on top of anything else, but for what is built into or over it.
Check overlap_check(const RuleBook& rules);

/// That, and one check for each row of the rule table and each tank rule.
std::vector<Check> spacing_checks(const RuleBook& rules);

/// The capacity that counts for an LP tank: its own, or of small ones (under 125 gal) what stands together.
double counted_capacity_m3(const Solid& tank, const Yard& yard);
/// What all LP tanks hold that stand near this one, itself included.
double aggregate_capacity_m3(const Solid& tank, const Yard& yard);

}  // namespace yardwright::clear
