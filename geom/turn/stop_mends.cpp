#include "geom/turn/stop_mends.hpp"

#include <algorithm>

#include "geom/site/footprint.hpp"
#include "geom/turn/arrivals.hpp"
#include "geom/turn/least_change.hpp"
#include "geom/turn/path_changes.hpp"
#include "geom/turn/radius_mends.hpp"

namespace yardwright::turn {

namespace {

constexpr double farthest_move_m = 120;
constexpr double exact_m = 0.01;
constexpr double line_step_m = 0.5;  // as a route's line is drawn
constexpr int ways_around = 12;
constexpr double hitch_hair_deg = 1e-6;

/// Judges changed paths of a route by one stop that it misses.
class StopTrial {
 public:
  StopTrial(const RouteCase& route, ItemId stop, const RuleBook& rules)
      : route_{route}, stop_{stop}, within_m_{rules.at("turn.stop").value} {
    before_ = arrivals(route.site, route.route().stops, route.line, within_m_);
    least_radius_m_ = std::min(yardwright::least_radius_m(route.course),
                               rules.at("turn.radius").value + route.vehicle.least_front_radius_m);
    most_hitch_deg_ = std::max(route.driven.greatest_hitch.angle.as_degrees(),
                               rules.at("turn.hitch-angle").value + route.vehicle.greatest_hitch_angle.as_degrees());
  }

  /// It comes to the stop, keeps those it has and asks for no tighter turn than before or than the vehicle makes.
  bool leads_there(const Route& changed) const {
    const Course course = course_of(changed.path, changed.corner_radius_m);
    if (yardwright::least_radius_m(course) < least_radius_m_) return false;
    return comes_to_all(arrivals(route_.site, changed.stops, as_path(course, line_step_m), within_m_));
  }

  double least_radius_m() const { return least_radius_m_; }

  bool can_be_driven(const Route& changed) const {
    const Item item{route_.item.id, route_.item.name, route_.item.phase, route_.item.gone_in, changed};
    const Driven driven = route_case(route_.site, item, route_.vehicle).driven;
    return driven.greatest_hitch.angle.as_degrees() <= most_hitch_deg_ + hitch_hair_deg;
  }

 private:
  bool comes_to_all(const std::vector<Arrival>& after) const {
    for (const Arrival& now : after) {
      const auto then = std::ranges::find(before_, now.stop, &Arrival::stop);
      const bool wanted = now.stop == stop_ || (then != before_.end() && then->gap_m <= within_m_);
      if (wanted && now.gap_m > within_m_) return false;
    }
    return true;
  }

  const RouteCase& route_;
  ItemId stop_;
  double within_m_ = 0;
  std::vector<Arrival> before_;
  double least_radius_m_ = 0;
  double most_hitch_deg_ = 0;
};

Item with(const RouteCase& route, Route changed) {
  Item item = route.item;
  item.thing = std::move(changed);
  return item;
}

/// Its stops in the order in which the way comes past them.
RouteCase with_stops_in_order(const RouteCase& route) {
  RouteCase sorted = route;
  std::ranges::stable_sort(std::get<Route>(sorted.item.thing).stops, {}, [&](ItemId stop) {
    const Item* item = find(route.site, stop);
    return item == nullptr ? 0.0 : nearest_on_path(route.line, place_of(item->thing)).station_m;
  });
  return sorted;
}

std::optional<Mend> other_order(const RouteCase& sorted, const StopTrial& trial) {
  if (!trial.leads_there(sorted.route())) return std::nullopt;
  return Mend{"put the stops of " + title_of(sorted.item) + " in the order in which it comes to them",
              Quantity::length,
              0,
              0,
              {PutItem{sorted.item}}};
}

std::vector<PathChange> changes_towards(const SitePath& path, SitePoint stop) {
  std::vector<PathChange> changes;
  for (std::size_t corner = 0; corner < path.size(); ++corner) add_corner_moves(changes, path, corner, ways_around);
  for (std::size_t leg = 0; leg + 1 < path.size(); ++leg) {
    add_leg_shifts(changes, path, leg);
    add_new_corner(changes, path, leg, stop);
  }
  return changes;
}

/// The least of each kind of change.
std::vector<Mend> other_paths(const RouteCase& route, const Item& stop, const StopTrial& trial) {
  std::vector<Mend> mends;
  const SitePath path = without_repeats(route.route().path);
  for (const PathChange& change : changes_towards(path, place_of(stop.thing))) {
    const auto changed = [&](double by_m) {
      Route other = route.route();
      other.path = change.by(by_m);
      return other;
    };
    const std::string action = std::string{change.words} + " " + title_of(route.item);
    const auto same = std::ranges::find(mends, action, &Mend::action);
    const double most_m = same == mends.end() ? farthest_move_m : same->change;
    const auto by_m = least_that_passes(most_m, exact_m, [&](double m) { return trial.leads_there(changed(m)); });
    if (!by_m || *by_m >= most_m || !trial.can_be_driven(changed(*by_m))) continue;
    if (same != mends.end()) mends.erase(same);
    mends.push_back({action, Quantity::length, *by_m, *by_m, {PutItem{with(route, changed(*by_m))}}});
  }
  std::ranges::stable_sort(mends, {}, &Mend::change);
  return mends;
}

/// A new corner towards the stop, and the others moved until arcs that can be driven fit between all of them.
std::optional<Mend> led_there(const RouteCase& route, const Item& stop, const StopTrial& trial) {
  std::vector<PathChange> changes;
  const SitePath path = without_repeats(route.route().path);
  for (std::size_t leg = 0; leg + 1 < path.size(); ++leg) add_new_corner(changes, path, leg, place_of(stop.thing));
  const double radius_m = trial.least_radius_m();
  std::optional<Mend> best;
  for (const PathChange& change : changes) {
    const auto roomier = [&](double by_m) { return with_room_for(change.by(by_m), radius_m); };
    const auto changed = [&](const Roomier& way) {
      Route other = route.route();
      other.path = way.path;
      other.corner_radius_m = std::max(other.corner_radius_m, radius_m);
      return other;
    };
    const auto by_m = least_that_passes(farthest_move_m, exact_m, [&](double m) {
      const auto way = roomier(m);
      return way && trial.leads_there(changed(*way));
    });
    const auto way = by_m ? roomier(*by_m) : std::nullopt;
    if (!way || (best && *by_m + way->moved_m >= best->change) || !trial.can_be_driven(changed(*way))) continue;
    best = Mend{"add a corner to " + title_of(route.item) + " and move those beside it",
                Quantity::length,
                *by_m + way->moved_m,
                *by_m + way->moved_m,
                {PutItem{with(route, changed(*way))}}};
  }
  return best;
}

/// A path that leads there.
std::vector<Mend> path_mends(const RouteCase& route, const Item& stop, const StopTrial& trial) {
  std::vector<Mend> mends = other_paths(route, stop, trial);
  if (!mends.empty()) return mends;
  if (auto led = led_there(route, stop, trial)) mends.push_back(std::move(*led));
  return mends;
}

}  // namespace

std::vector<Mend> stop_mends(const RouteCase& route, const Item& stop, const RuleBook& rules) {
  const RouteCase sorted = with_stops_in_order(route);
  const StopTrial trial{route, stop.id, rules}, sorted_trial{sorted, stop.id, rules};
  const bool out_of_order = sorted.route().stops != route.route().stops;
  if (out_of_order) {
    if (auto order = other_order(sorted, sorted_trial)) return {std::move(*order)};
  }
  std::vector<Mend> mends = path_mends(route, stop, trial);
  if (!mends.empty() || !out_of_order) return mends;
  mends = path_mends(sorted, stop, sorted_trial);
  for (Mend& mend : mends) mend.action += ", with its stops in the order in which it comes to them,";
  return mends;
}

}  // namespace yardwright::turn
