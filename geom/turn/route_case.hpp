// One route driven by its vehicle, at hand for everything that is judged of it; and what it must stay clear of.
#pragma once

#include <string_view>

#include "geom/shape/outline.hpp"
#include "geom/site/site.hpp"
#include "geom/turn/clearance.hpp"

namespace yardwright::turn {

/// `site` and `vehicle` must outlive it.
struct RouteCase {
  const Site& site;
  const Vehicle& vehicle;
  Item item;  ///< the route; a mend tries others than the site's
  Course course;
  SitePath line;  ///< the course as a polyline
  Driven driven;
  Passage bodies, tyres;

  const Route& route() const { return *as<Route>(item); }
};

RouteCase route_case(const Site& site, const Item& route, const Vehicle& vehicle);
/// The same of a drive that is known already.
RouteCase route_case(const Site& site, const Item& route, const Vehicle& vehicle, Course course, Driven driven);

/// Something to stay clear of, judged by a rule; tyres keep off pits, bodies off the rest.
struct Obstacle {
  std::string_view rule;
  std::vector<Outline> parts;  ///< a line is a ring of two corners
  bool of_tyres = false;
};

/// What an item puts in the route's way. A scale that is driven over is none; a gate is its posts, a drive-through
/// its walls and jambs, and a stand its posts, where the route goes through.
std::vector<Obstacle> obstacles_of(const Item& item, const RouteCase& route);
/// The lot's edges to neighbours, open at gates.
Obstacle neighbour_edges(const Site& site);

/// To the nearest of its parts; infinite where it has none.
Clearance clearance_to(const RouteCase& route, const Obstacle& obstacle);

/// Whether the route's line goes over the outline.
bool goes_over(const RouteCase& route, const Outline& outline);

}  // namespace yardwright::turn
