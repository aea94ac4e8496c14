#include "editor/session/pick.hpp"

#include <algorithm>
#include <tuple>

#include "geom/site/footprint.hpp"

namespace yardwright::session {

namespace {

enum class Rank { inside_solid, on_line, near_solid, ribbon, area, picture };

struct Candidate {
  Rank rank;
  double area_m2;
  ItemId id;
  auto key() const { return std::tuple{rank, area_m2}; }
};

double distance_to(const Outline& outline, SitePoint point) {
  if (contains(outline, point)) return 0;
  return nearest_pair(outline, SitePath{point, point + SiteVector{1e-6, 0}}).distance_m;
}

double covered_m2(const Outline& outline) { return area_m2(as_polygon(outline, 16)); }

bool is_ribbon(const Thing& thing) {
  return std::holds_alternative<Drive>(thing) || std::holds_alternative<Berm>(thing) ||
         std::holds_alternative<Swale>(thing);
}

std::optional<Candidate> solid_candidate(const Item& item, const Outline& outline, SitePoint point, double radius_m) {
  const double away_m = distance_to(outline, point);
  if (away_m > radius_m) return std::nullopt;
  return Candidate{away_m == 0 ? Rank::inside_solid : Rank::near_solid, covered_m2(outline), item.id};
}

std::optional<Candidate> line_candidate(const Item& item, const SitePath& path, SitePoint point, double radius_m) {
  if (path.empty()) return std::nullopt;
  const double away_m = path.size() == 1 ? distance(path.front(), point) : nearest_on_path(path, point).distance_m;
  if (away_m > radius_m) return std::nullopt;
  return Candidate{Rank::on_line, away_m, item.id};
}

std::optional<Candidate> ground_candidate(const Item& item, SitePoint point, double radius_m, Rank rank) {
  if (const SitePath* path = path_of(item.thing); path != nullptr && path->size() < 3 && is_area(item.thing))
    return std::nullopt;
  if (path_of(item.thing) != nullptr && path_of(item.thing)->size() < 2) return std::nullopt;
  const Outline outline = extent(item.thing);
  if (distance_to(outline, point) > radius_m) return std::nullopt;
  return Candidate{rank, covered_m2(outline), item.id};
}

/// Taken by its edge alone, so that what is traced over it can be clicked and boxed.
std::optional<Candidate> picture_candidate(const Picture& picture, ItemId id, SitePoint point, double radius_m) {
  SitePath edge = rectangle({picture.at, picture.facing}, height_m(picture), picture.width_m).outer;
  edge.push_back(edge.front());
  if (nearest_on_path(edge, point).distance_m > radius_m) return std::nullopt;
  return Candidate{Rank::picture, picture.width_m, id};
}

std::optional<Candidate> candidate(const Site& site, const Item& item, SitePoint point, double radius_m) {
  if (const Spout* spout = as<Spout>(item)) {
    const auto line = spout_line(site, *spout);
    return line ? line_candidate(item, {line->first, line->second}, point, radius_m) : std::nullopt;
  }
  if (const auto solid = footprint(item.thing)) return solid_candidate(item, *solid, point, radius_m);
  if (const auto hole = pit_hole(item.thing)) return solid_candidate(item, *hole, point, radius_m);
  if (is_ribbon(item.thing)) return ground_candidate(item, point, radius_m, Rank::ribbon);
  if (is_area(item.thing)) return ground_candidate(item, point, radius_m, Rank::area);
  if (const Picture* picture = as<Picture>(item)) return picture_candidate(*picture, item.id, point, radius_m);
  if (const SitePath* path = path_of(item.thing)) return line_candidate(item, *path, point, radius_m);
  return solid_candidate(item, extent(item.thing), point, radius_m);
}

}  // namespace

bool is_area(const Thing& thing) { return std::holds_alternative<Pad>(thing) || std::holds_alternative<Cover>(thing); }

std::optional<std::pair<SitePoint, SitePoint>> spout_line(const Site& site, const Spout& spout) {
  const Item* from = find(site, spout.from);
  const Item* to = find(site, spout.to);
  if (from == nullptr || to == nullptr) return std::nullopt;
  return std::pair{place_of(from->thing), place_of(to->thing)};
}

std::vector<SitePoint> outline_points(const Site& site, const Item& item) {
  if (const Spout* spout = as<Spout>(item)) {
    const auto line = spout_line(site, *spout);
    return line ? std::vector{line->first, line->second} : std::vector<SitePoint>{};
  }
  if (const SitePath* path = path_of(item.thing); path != nullptr && path->size() < 2) return *path;
  const Box box = box_of(extent(item.thing));
  return {box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}};
}

ItemId pick(const Site& site, SitePoint point, double radius_m) {
  std::optional<Candidate> best;
  for (const Item& item : site.items) {
    const auto found = candidate(site, item, point, radius_m);
    if (found && (!best || found->key() <= best->key())) best = found;
  }
  return best ? best->id : ItemId{};
}

std::vector<ItemId> inside(const Site& site, const Box& box) {
  std::vector<ItemId> ids;
  const auto within = [&](SitePoint p) {
    return p.x >= box.low.x && p.y >= box.low.y && p.x <= box.high.x && p.y <= box.high.y;
  };
  for (const Item& item : site.items) {
    const auto points = outline_points(site, item);
    if (!points.empty() && std::ranges::all_of(points, within)) ids.push_back(item.id);
  }
  return ids;
}

}  // namespace yardwright::session
