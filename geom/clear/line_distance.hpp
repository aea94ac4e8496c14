// How far from an overhead line grain is filled: the published sloped envelope over a bin's highest port. V is the
// port's height and h the conductor's, both above the ground at the bin. A line that clears the port by the probe
// clearance clears at any distance; else the envelope is level out to V + clearance, then falls 1 in 1.5. The
// published table runs that slope to 18.0 ft for its 18.5 ft line, so heights up to 18.5 ft are run as 18.0 at
// most. It is the utility that decides: a distance that the site sets as its own holds whatever the heights are. Sources: docs/methods/clear.md.
#pragma once

#include <optional>

#include "geom/site/rule.hpp"

namespace yardwright::clear {

/// From the bin's wall on the plan; nothing where the line clears at any distance.
std::optional<double> portable_distance_m(double port_m, double conductor_m, const RuleBook& rules);
/// The same for a leg, permanent conveyor or spout-filled bin.
std::optional<double> permanent_distance_m(double port_m, double conductor_m, const RuleBook& rules);
/// For machines that work or pass beside the line: 29 CFR 1926.1408, Table A.
double equipment_distance_m(double voltage_v, const RuleBook& rules);

}  // namespace yardwright::clear
