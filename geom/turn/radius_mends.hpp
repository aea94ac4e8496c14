// The least changes of a route's corners after which arcs of a radius fit between its legs, where they are too short.
#pragma once

#include <optional>

#include "geom/site/finding.hpp"
#include "geom/turn/route_case.hpp"

namespace yardwright::turn {

/// The path changed where it is too tight, corner after corner, each by the least that makes room; nothing where no
/// change that is tried does. Legs need twice the tangent of each arc, as course_of() draws them.
struct Roomier {
  SitePath path;
  double moved_m = 0;      ///< all moves together
  std::string_view words;  ///< of the last change; see PathChange
  int changes = 0;
};
std::optional<Roomier> with_room_for(const SitePath& path, double radius_m);

/// The route with such a path and that radius.
std::optional<Mend> roomier_route(const RouteCase& route, double radius_m);

}  // namespace yardwright::turn
