#include "geom/turn/radius_mends.hpp"

#include <algorithm>
#include <cmath>

#include "geom/turn/least_change.hpp"
#include "geom/turn/path_changes.hpp"

namespace yardwright::turn {

namespace {

constexpr double farthest_move_m = 60;
constexpr double exact_m = 0.01;
constexpr double hair_m = 1e-6;
constexpr int ways_around = 24;

/// What the shorter leg of a corner lacks for an arc of the radius; 0 where it fits, and at the ends.
double short_m(const SitePath& path, std::size_t corner, double radius_m) {
  if (corner == 0 || corner + 1 >= path.size()) return 0;
  const SiteVector in = path[corner] - path[corner - 1], out = path[corner + 1] - path[corner];
  const double turn_rad = std::abs(std::atan2(cross(in, out), dot(in, out)));
  return std::max(0.0, 2 * radius_m * std::tan(turn_rad / 2) + hair_m - std::min(length(in), length(out)));
}

std::size_t worst_corner(const SitePath& path, double radius_m) {
  std::size_t worst = 0;
  for (std::size_t i = 1; i + 1 < path.size(); ++i) {
    if (short_m(path, i, radius_m) > short_m(path, worst, radius_m)) worst = i;
  }
  return worst;
}

/// Whether a corner has room now and none has become shorter of it than it was.
bool makes_room(const SitePath& changed, const SitePath& before, std::size_t corner, double radius_m) {
  if (short_m(changed, corner, radius_m) > 0) return false;
  for (std::size_t i = 1; i + 1 < before.size(); ++i) {
    if (short_m(changed, i, radius_m) > short_m(before, i, radius_m)) return false;
  }
  return true;
}

std::vector<PathChange> changes_about(const SitePath& path, std::size_t corner) {
  std::vector<PathChange> changes;
  for (std::size_t i = corner - 1; i <= corner + 1; ++i) add_corner_moves(changes, path, i, ways_around);
  const std::size_t first = corner < 2 ? 0 : corner - 2, last = std::min(corner + 1, path.size() - 2);
  for (std::size_t leg = first; leg <= last; ++leg) add_leg_shifts(changes, path, leg);
  return changes;
}

/// Changes the path by the least that gives the corner room.
bool give_room(Roomier& roomier, std::size_t corner, double radius_m) {
  double least_m = farthest_move_m;
  std::optional<SitePath> best;
  for (const PathChange& change : changes_about(roomier.path, corner)) {
    const auto by_m = least_that_passes(
        least_m, exact_m, [&](double m) { return makes_room(change.by(m), roomier.path, corner, radius_m); });
    if (!by_m || (best && *by_m >= least_m)) continue;
    least_m = *by_m;
    best = change.by(*by_m);
    roomier.words = change.words;
  }
  if (!best) return false;
  roomier.path = std::move(*best);
  roomier.moved_m += least_m;
  ++roomier.changes;
  return true;
}

}  // namespace

std::optional<Roomier> with_room_for(const SitePath& path, double radius_m) {
  Roomier roomier{without_repeats(path), 0, {}, 0};
  for (std::size_t tries = 0; tries <= roomier.path.size(); ++tries) {
    const std::size_t corner = worst_corner(roomier.path, radius_m);
    if (corner == 0) return roomier;
    if (!give_room(roomier, corner, radius_m)) return std::nullopt;
  }
  return std::nullopt;
}

std::optional<Mend> roomier_route(const RouteCase& route, double radius_m) {
  const double drawn_m = std::max(radius_m, route.route().corner_radius_m);
  const auto roomier = with_room_for(route.route().path, radius_m);
  if (!roomier || least_radius_m(course_of(roomier->path, drawn_m)) < radius_m) return std::nullopt;
  Item changed = route.item;
  std::get<Route>(changed.thing).path = roomier->path;
  std::get<Route>(changed.thing).corner_radius_m = drawn_m;
  const std::string_view words = roomier->changes == 1 ? roomier->words : "move corners of";
  return Mend{std::string{words} + " " + title_of(route.item) + " and round it wider",
              Quantity::length,
              roomier->moved_m,
              roomier->moved_m,
              {PutItem{changed}}};
}

}  // namespace yardwright::turn
