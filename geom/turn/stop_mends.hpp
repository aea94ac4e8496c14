// The least changes that lead a route to a stop that it misses: the stops put in the order in which it comes to them, a
// corner or leg moved, a corner added. It stays drivable and keeps the stops that it has.
#pragma once

#include "geom/site/finding.hpp"
#include "geom/turn/route_case.hpp"

namespace yardwright::turn {

/// The best first: another order, then the shortest move.
std::vector<Mend> stop_mends(const RouteCase& route, const Item& stop, const RuleBook& rules);

}  // namespace yardwright::turn
