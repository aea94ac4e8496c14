#include "geom/turn/room_mends.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geom/shape/path.hpp"
#include "geom/site/footprint.hpp"
#include "geom/turn/least_change.hpp"
#include "geom/turn/path_changes.hpp"

namespace yardwright::turn {

namespace {

constexpr double farthest_move_m = 30;
constexpr double widest_radius_m = 60;
constexpr double most_wider_m = 6;
constexpr double exact_m = 0.01;
constexpr int ways_around = 16;

/// The room beside an item as the check measures it by that rule. Where the route no longer goes through a gate, a stand or a
/// drive-through, either has left its place and not given room: that is none.
double room_m(const RouteCase& route, const Item* item, std::string_view rule) {
  constexpr double none_m = -1;
  double least_m = std::numeric_limits<double>::infinity();
  const std::vector<Obstacle> obstacles =
      item != nullptr ? obstacles_of(*item, route) : std::vector{neighbour_edges(route.site)};
  for (const Obstacle& obstacle : obstacles) {
    if (obstacle.rule == rule) least_m = std::min(least_m, clearance_to(route, obstacle).distance_m);
  }
  return std::isfinite(least_m) ? least_m : none_m;
}

/// From the route towards the thing; where they meet, from the route's line to the thing's middle.
SiteVector away_from_route(const RouteCase& route, const ItemClearance& near, const Item* item) {
  if (near.clearance.distance_m > 0) return unit(near.clearance.on_obstacle - near.clearance.on_vehicle);
  const SitePoint middle = item != nullptr ? place_of(item->thing) : near.clearance.on_obstacle;
  const SiteVector apart = middle - nearest_on_path(route.line, middle).point;
  return length(apart) > 0 ? unit(apart) : SiteVector{0, 1};
}

std::optional<Mend> moved_item(const RouteCase& route, const ItemClearance& near, double required_m) {
  const Item* item = find(route.site, near.item);
  if (item == nullptr) return std::nullopt;
  const SiteVector away = away_from_route(route, near, item);
  std::optional<Mend> best;
  for (const SiteVector way : {away, left_of(away), right_of(away), -away}) {
    const auto moved_by = [&](double by_m) {
      Item there = *item;
      there.thing = moved(there.thing, way * by_m);
      return there;
    };
    const auto enough = least_that_passes(farthest_move_m, exact_m, [&](double by_m) {
      const Item there = moved_by(by_m);
      return room_m(route, &there, near.rule) >= required_m;
    });
    if (!enough || (best && best->change <= *enough)) continue;
    best = Mend{"move " + title_of(*item), Quantity::length, *enough, *enough, {PutItem{moved_by(*enough)}}};
  }
  return best;
}

/// Whether a changed route has the room, and does not ask for a tighter turn than before or than the vehicle makes.
bool has_room(const RouteCase& route, const Item& changed, const ItemClearance& near, double required_m) {
  const Route& drawn = *as<Route>(changed);
  const double radius_m = least_radius_m(course_of(drawn.path, drawn.corner_radius_m));
  if (radius_m < std::min(least_radius_m(route.course), route.vehicle.least_front_radius_m)) return false;
  const RouteCase other = route_case(route.site, changed, route.vehicle);
  return room_m(other, find(route.site, near.item), near.rule) >= required_m;
}

/// The corner of the path nearest to where it is tight; the ends of a longer path stay where they are.
std::size_t nearest_corner(const SitePath& path, SitePoint place) {
  const std::size_t first = path.size() > 2 ? 1 : 0, last = path.size() > 2 ? path.size() - 2 : path.size() - 1;
  std::size_t best = first;
  for (std::size_t i = first; i <= last; ++i) {
    if (distance(path[i], place) < distance(path[best], place)) best = i;
  }
  return best;
}

std::optional<Mend> moved_corner(const RouteCase& route, const ItemClearance& near, double required_m) {
  const SiteVector way = -away_from_route(route, near, find(route.site, near.item));
  const std::size_t corner = nearest_corner(route.route().path, near.clearance.on_obstacle);
  const auto moved_by = [&](double by_m) {
    Item changed = route.item;
    SitePoint& point = std::get<Route>(changed.thing).path[corner];
    point = point + way * by_m;
    return changed;
  };
  const auto enough = least_that_passes(farthest_move_m, exact_m,
                                        [&](double by_m) { return has_room(route, moved_by(by_m), near, required_m); });
  if (!enough) return std::nullopt;
  return Mend{
      "move a corner of " + title_of(route.item), Quantity::length, *enough, *enough, {PutItem{moved_by(*enough)}}};
}

std::optional<Mend> wider_corners(const RouteCase& route, const ItemClearance& near, double required_m) {
  if (route.route().path.size() < 3) return std::nullopt;
  const auto with_radius_more_by = [&](double by_m) {
    Item changed = route.item;
    std::get<Route>(changed.thing).corner_radius_m += by_m;
    return changed;
  };
  const auto enough = least_that_passes(widest_radius_m, exact_m, [&](double by_m) {
    return has_room(route, with_radius_more_by(by_m), near, required_m);
  });
  if (!enough) return std::nullopt;
  return Mend{"round the corners of " + title_of(route.item) + " wider",
              Quantity::length,
              *enough,
              route.route().corner_radius_m + *enough,
              {PutItem{with_radius_more_by(*enough)}}};
}

/// What the route goes through made wider: a gate, the doors of a receiving (and its walls), a stand.
Item wider(Item item, double by_m) {
  if (Gate* gate = std::get_if<Gate>(&item.thing)) gate->width_m += by_m;
  if (OverheadHolding* bin = std::get_if<OverheadHolding>(&item.thing)) bin->stand_width_m += by_m;
  if (Receiving* dump = std::get_if<Receiving>(&item.thing)) {
    dump->door_width_m += by_m;
    dump->width_m += by_m;
  }
  return item;
}

std::optional<Mend> widened(const RouteCase& route, const ItemClearance& near, double required_m) {
  const Item* item = find(route.site, near.item);
  if (item == nullptr || near.rule != "turn.jamb-clear") return std::nullopt;
  const auto enough = least_that_passes(most_wider_m, exact_m, [&](double by_m) {
    const Item there = wider(*item, by_m);
    return room_m(route, &there, near.rule) >= required_m;
  });
  if (!enough) return std::nullopt;
  const std::string what = as<Receiving>(*item) != nullptr ? "widen the doors of " : "widen ";
  return Mend{what + title_of(*item), Quantity::length, *enough, *enough, {PutItem{wider(*item, *enough)}}};
}

/// The item moved any way around, where none of the four straight ways passes.
std::optional<Mend> moved_around(const RouteCase& route, const ItemClearance& near, double required_m) {
  const Item* item = find(route.site, near.item);
  if (item == nullptr) return std::nullopt;
  std::optional<Mend> best;
  for (int i = 0; i < ways_around; ++i) {
    const SiteVector way = direction(Bearing::degrees(360.0 * i / ways_around));
    const auto there = [&](double by_m) {
      Item changed = *item;
      changed.thing = moved(changed.thing, way * by_m);
      return changed;
    };
    const auto by_m = least_in_small_steps(best ? best->change : farthest_move_m, exact_m, [&](double m) {
      const Item changed = there(m);
      return room_m(route, &changed, near.rule) >= required_m;
    });
    if (by_m) best = Mend{"move " + title_of(*item), Quantity::length, *by_m, *by_m, {PutItem{there(*by_m)}}};
  }
  return best;
}

/// Changes of the path near the place where it is tight: its corners there any way around, its legs there sideways, and a new
/// corner drawn away from the thing.
std::vector<PathChange> changes_near(const RouteCase& route, const ItemClearance& near) {
  const SitePath path = without_repeats(route.route().path);
  const SitePoint tight = near.clearance.on_obstacle;
  const auto leg_gap_m = [&](std::size_t leg) {
    return nearest_on_segment(path[leg], path[leg + 1], tight).distance_m;
  };
  std::size_t leg = 0;
  for (std::size_t i = 0; i + 1 < path.size(); ++i) {
    if (leg_gap_m(i) < leg_gap_m(leg)) leg = i;
  }
  std::vector<PathChange> changes;
  add_leg_shifts(changes, path, leg);
  const SitePoint on_leg = nearest_on_segment(path[leg], path[leg + 1], tight).point;
  const SiteVector left = left_of(unit(path[leg + 1] - path[leg]));
  for (const SiteVector way : {left, -left}) add_new_corner(changes, path, leg, on_leg + way);
  for (const std::size_t corner : {leg, leg + 1}) {
    if (corner > 0 && corner + 1 < path.size()) add_corner_moves(changes, path, corner, ways_around);
  }
  return changes;
}

/// The path changed in other ways than by its nearest corner straight away.
std::optional<Mend> other_path(const RouteCase& route, const ItemClearance& near, double required_m) {
  std::optional<Mend> best;
  for (const PathChange& change : changes_near(route, near)) {
    const auto changed = [&](double by_m) {
      Item other = route.item;
      std::get<Route>(other.thing).path = change.by(by_m);
      return other;
    };
    const auto by_m = least_that_passes(best ? best->change : farthest_move_m, exact_m,
                                        [&](double m) { return has_room(route, changed(m), near, required_m); });
    if (!by_m || (best && *by_m >= best->change)) continue;
    best = Mend{std::string{change.words} + " " + title_of(route.item),
                Quantity::length,
                *by_m,
                *by_m,
                {PutItem{changed(*by_m)}}};
  }
  return best;
}

}  // namespace

std::vector<Mend> room_mends(const RouteCase& route, const ItemClearance& near, double required_m, MendSearch& search) {
  std::vector<Mend> mends;
  const auto seek = [&](auto... levers) {
    for (const auto lever : {levers...}) {
      if (!search.may_seek()) break;
      if (auto mend = lever(route, near, required_m)) mends.push_back(std::move(*mend));
    }
  };
  seek(moved_corner, moved_item, wider_corners, widened);
  if (mends.empty()) seek(moved_around, other_path);
  std::ranges::stable_sort(mends, {}, &Mend::change);
  return mends;
}

}  // namespace yardwright::turn
