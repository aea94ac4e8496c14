#include "geom/turn/route_case.hpp"

#include <algorithm>
#include <limits>

#include "geom/site/footprint.hpp"

namespace yardwright::turn {

namespace {

constexpr double pose_step_m = 0.25;
constexpr double line_step_m = 0.5;
constexpr double wall_m = 0.15;  ///< thickness of a building's wall
constexpr double post_radius_m = 0.1;
constexpr double gate_depth_m = 1.0;

/// Distances along and across a thing's facing, from its centre.
struct Layout {
  SitePoint at;
  SiteVector along, across;
  SitePoint point(double along_m, double across_m) const { return at + along * along_m + across * across_m; }
  Polygon box(double rear_m, double front_m, double right_m, double left_m) const {
    return {{point(rear_m, right_m), point(rear_m, left_m), point(front_m, left_m), point(front_m, right_m)}, {}};
  }
};

Layout layout_of(SitePoint at, Bearing facing) { return {at, direction(facing), left_of(direction(facing))}; }

/// Side walls, and beside each door the wall that its jamb ends.
std::vector<Outline> walls(const Receiving& dump) {
  const Layout plan = layout_of(dump.at, dump.facing);
  const double end_m = dump.length_m / 2, side_m = dump.width_m / 2,
               jamb_m = std::min(dump.door_width_m / 2, side_m - wall_m);
  std::vector<Outline> parts;
  for (const double side : {-1.0, 1.0}) {
    parts.push_back(plan.box(-end_m, end_m, side * side_m, side * (side_m - wall_m)));
    parts.push_back(plan.box(-end_m, -end_m + wall_m, side * side_m, side * jamb_m));
    parts.push_back(plan.box(end_m - wall_m, end_m, side * side_m, side * jamb_m));
  }
  return parts;
}

std::vector<Outline> posts(const Gate& gate) {
  const Layout plan = layout_of(gate.at, gate.facing);
  const double post_m = gate.width_m / 2 + post_radius_m;
  return {Disc{plan.point(0, post_m), post_radius_m}, Disc{plan.point(0, -post_m), post_radius_m}};
}

std::vector<Outline> posts(const OverheadHolding& bin) {
  const Layout plan = layout_of(bin.at, bin.facing);
  const double post_m = bin.stand_width_m / 2 - post_radius_m;
  std::vector<Outline> parts;
  for (const double along : {-post_m, post_m}) {
    for (const double across : {-post_m, post_m}) parts.push_back(Disc{plan.point(along, across), post_radius_m});
  }
  return parts;
}

std::vector<Outline> solid_parts(const Item& item) {
  const auto solid = footprint(item.thing);
  return solid ? std::vector<Outline>{*solid} : std::vector<Outline>{};
}

Obstacle solid_obstacle(const Item& item, const RouteCase& route) {
  const auto over = [&] { return goes_over(route, *footprint(item.thing)); };
  if (const Gate* gate = as<Gate>(item)) {
    const bool through = goes_over(route, rectangle({gate->at, gate->facing}, gate_depth_m, gate->width_m));
    return {"turn.jamb-clear", through ? posts(*gate) : std::vector<Outline>{}};
  }
  if (const Receiving* dump = as<Receiving>(item)) {
    if (dump->type == ReceivingKind::open_dump) return {"turn.clearance", {}};
    if (over()) return {"turn.jamb-clear", walls(*dump)};
  }
  if (const OverheadHolding* bin = as<OverheadHolding>(item); bin != nullptr && over())
    return {"turn.jamb-clear", posts(*bin)};
  if (as<Scale>(item) != nullptr && (over() || std::ranges::count(route.route().stops, item.id) > 0))
    return {"turn.clearance", {}};
  return {"turn.clearance", solid_parts(item)};
}

struct Gap {
  double from_m, to_m;
};

/// The parts of an edge that gates leave open, by distance from its first corner.
std::vector<Gap> gaps_in(const Site& site, SitePoint from, SitePoint to) {
  std::vector<Gap> gaps;
  for_each<Gate>(site, [&](const Item&, const Gate& gate) {
    const Nearest foot = nearest_on_segment(from, to, gate.at);
    if (foot.distance_m < gate.width_m / 2)
      gaps.push_back({foot.station_m - gate.width_m / 2, foot.station_m + gate.width_m / 2});
  });
  std::ranges::sort(gaps, {}, &Gap::from_m);
  return gaps;
}

void append_edge(std::vector<Outline>& parts, const Site& site, SitePoint from, SitePoint to) {
  const double length_m = distance(from, to);
  const SiteVector along = unit(to - from);
  double done_m = 0;
  const auto append = [&](double until_m) {
    if (until_m > done_m) parts.push_back(Polygon{{from + along * done_m, from + along * until_m}, {}});
  };
  for (const Gap& gap : gaps_in(site, from, to)) {
    append(std::min(gap.from_m, length_m));
    done_m = std::max(done_m, gap.to_m);
  }
  append(length_m);
}

}  // namespace

RouteCase route_case(const Site& site, const Item& item, const Vehicle& vehicle) {
  const Route& route = *as<Route>(item);
  Course course = course_of(route.path, route.corner_radius_m);
  Driven driven = drive(vehicle, course, pose_step_m);
  return route_case(site, item, vehicle, std::move(course), std::move(driven));
}

RouteCase route_case(const Site& site, const Item& item, const Vehicle& vehicle, Course course, Driven driven) {
  RouteCase one{site, vehicle, item, std::move(course), {}, std::move(driven), {}, {}};
  one.line = as_path(one.course, line_step_m);
  one.bodies = passage_of(one.driven, bodies_of(vehicle));
  one.tyres = passage_of(one.driven, tyres_of(vehicle));
  return one;
}

std::vector<Obstacle> obstacles_of(const Item& item, const RouteCase& route) {
  std::vector<Obstacle> obstacles;
  if (item.id == route.item.id) return obstacles;
  if (Obstacle solid = solid_obstacle(item, route); !solid.parts.empty()) obstacles.push_back(std::move(solid));
  const bool under_grate = as<Receiving>(item) != nullptr && goes_over(route, *footprint(item.thing));
  if (const auto hole = pit_hole(item.thing); hole && !under_grate)
    obstacles.push_back({"turn.pit-edge", {*hole}, true});
  return obstacles;
}

Obstacle neighbour_edges(const Site& site) {
  Obstacle edges{"turn.lot-edge", {}};
  const Lot& lot = site.lot;
  for (std::size_t i = 0; i < lot.corners.size() && i < lot.edges.size(); ++i) {
    if (lot.edges[i] != LotEdge::neighbour) continue;
    append_edge(edges.parts, site, lot.corners[i], lot.corners[(i + 1) % lot.corners.size()]);
  }
  return edges;
}

Clearance clearance_to(const RouteCase& route, const Obstacle& obstacle) {
  const Passage& passage = obstacle.of_tyres ? route.tyres : route.bodies;
  Clearance best{std::numeric_limits<double>::infinity(), {}, {}, 0, 0};
  for (const Outline& part : obstacle.parts) {
    const Clearance here = least_clearance(route.driven, passage, part);
    if (here.distance_m < best.distance_m) best = here;
  }
  return best;
}

bool goes_over(const RouteCase& route, const Outline& outline) {
  if (route.line.size() < 2 || gap_m(box_of(outline), box_of(route.line)) > 0) return false;
  return yardwright::nearest_pair(outline, route.line).distance_m == 0;
}

}  // namespace yardwright::turn
