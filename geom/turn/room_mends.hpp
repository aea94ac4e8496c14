// The least changes that give a route enough room beside a thing: move the thing, move a corner of the route, or
// round its corners wider. Each is found with the check's own measure.
#pragma once

#include "geom/site/mend_search.hpp"
#include "geom/turn/route_case.hpp"
#include "geom/turn/turn.hpp"

namespace yardwright::turn {

/// The least first; of those there was time for.
std::vector<Mend> room_mends(const RouteCase& route, const ItemClearance& near, double required_m, MendSearch& search);

}  // namespace yardwright::turn
