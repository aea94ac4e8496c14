// Distances to the lot's edges, by the kind of edge: road, neighbour, the owner's own field. What lies over an
// edge or outside the lot has a negative distance. Every figure is local: the shipped ones are to be replaced.
#pragma once

#include "geom/clear/gap.hpp"

namespace yardwright::clear {

std::vector<Check> lot_checks();

/// What a thing keeps to edges of a kind; null where no rule is about it.
const Rule* edge_rule(const Solid& solid, LotEdge kind, const RuleBook& rules);

/// To the nearest edge of a kind; nothing where the lot has none. Negative is outside.
std::optional<NearestPair> to_lot_edge(const Solid& solid, const Yard& yard, LotEdge kind);

}  // namespace yardwright::clear
