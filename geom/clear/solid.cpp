#include "geom/clear/solid.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace yardwright::clear {

namespace {

std::optional<Parts> part_of(const Item& item) {
  if (const Building* building = as<Building>(item)) {
    if (building->use == BuildingUse::dwelling) return part::dwelling;
    return building->use == BuildingUse::control_room ? part::control_room : part::farm_building;
  }
  if (const Tank* tank = as<Tank>(item))
    return tank->contents == TankContents::lp_gas ? part::lp_tank : part::ammonia_tank;
  if (as<Bin>(item) != nullptr) return part::bin;
  if (as<Leg>(item) != nullptr) return part::leg;
  if (as<Dryer>(item) != nullptr) return part::dryer;
  if (as<OverheadHolding>(item) != nullptr) return part::overhead_bin;
  if (as<Receiving>(item) != nullptr) return part::receiving;
  if (as<Scale>(item) != nullptr) return part::truck_scale;
  if (as<Well>(item) != nullptr) return part::well;
  if (as<Conveyor>(item) != nullptr) return part::conveyor;
  return std::nullopt;
}

/// How far an outline lies along an axis.
struct Span {
  double low, high;
};

Span span_along(const Outline& outline, SiteVector axis) {
  if (const Disc* disc = std::get_if<Disc>(&outline)) {
    const double middle = disc->centre.x * axis.x + disc->centre.y * axis.y;
    return {middle - disc->radius_m, middle + disc->radius_m};
  }
  Span span{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
  for (const SitePoint& corner : std::get<Polygon>(outline).outer) {
    const double at = corner.x * axis.x + corner.y * axis.y;
    span = {std::min(span.low, at), std::max(span.high, at)};
  }
  return span;
}

void add_sides(std::vector<SiteVector>& axes, const Outline& outline) {
  const Polygon* polygon = std::get_if<Polygon>(&outline);
  if (polygon == nullptr) return;
  for (std::size_t i = 0; i < polygon->outer.size(); ++i) {
    const SitePoint from = polygon->outer[i], to = polygon->outer[(i + 1) % polygon->outer.size()];
    axes.push_back(unit(right_of(to - from)));
  }
}

/// From the centre of a disc to the nearest corner: the one axis that no side gives.
void add_corner(std::vector<SiteVector>& axes, const Outline& round, const Outline& other) {
  const Disc* disc = std::get_if<Disc>(&round);
  const Polygon* polygon = std::get_if<Polygon>(&other);
  if (disc == nullptr || polygon == nullptr || polygon->outer.empty()) return;
  const SitePoint corner =
      *std::ranges::min_element(polygon->outer, {}, [&](SitePoint p) { return distance(p, disc->centre); });
  axes.push_back(unit(corner - disc->centre));
}

std::vector<SiteVector> axes_of(const Outline& a, const Outline& b) {
  std::vector<SiteVector> axes;
  add_sides(axes, a);
  add_sides(axes, b);
  add_corner(axes, a, b);
  add_corner(axes, b, a);
  const Disc *one = std::get_if<Disc>(&a), *other = std::get_if<Disc>(&b);
  if (one != nullptr && other != nullptr)
    axes.push_back(one->centre == other->centre ? SiteVector{1, 0} : unit(other->centre - one->centre));
  return axes;
}

/// The pair drawn for an overlap: from where they meet, as deep as the way out that `b` has is long.
NearestPair overlap(const Outline& a, const Outline& b, SitePoint meet) {
  double depth_m = std::numeric_limits<double>::infinity();
  SiteVector way;
  for (const SiteVector axis : axes_of(a, b)) {
    if (axis == SiteVector{}) continue;
    const Span one = span_along(a, axis), other = span_along(b, axis);
    const double forth_m = one.high - other.low, back_m = other.high - one.low;
    if (std::min(forth_m, back_m) >= depth_m) continue;
    depth_m = std::min(forth_m, back_m);
    way = forth_m <= back_m ? axis : -axis;
  }
  if (!std::isfinite(depth_m)) return {meet, meet, 0};
  return {meet, meet + way * depth_m, -depth_m};
}

}  // namespace

std::optional<Solid> solid_of(const Item& item) {
  const auto part = part_of(item);
  if (!part) return std::nullopt;
  auto outline = footprint(item.thing);
  if (!outline) outline = extent(item.thing);
  const Box box = box_of(*outline);
  return Solid{&item, *part, std::move(*outline), box};
}

Yard yard_of(const Site& site, const DesignSurface& surface, const RuleBook& rules) {
  Yard yard{site, surface, rules, {}, {site.lot.corners, {}}};
  for (const Item& item : site.items) {
    if (auto solid = solid_of(item)) yard.solids.push_back(std::move(*solid));
  }
  return yard;
}

double distance_m(const Box& a, const Box& b) {
  const double x_m = std::max({0.0, a.low.x - b.high.x, b.low.x - a.high.x});
  const double y_m = std::max({0.0, a.low.y - b.high.y, b.low.y - a.high.y});
  return std::sqrt(x_m * x_m + y_m * y_m);
}

NearestPair separation(const Outline& a, const Outline& b) {
  const NearestPair pair = nearest_pair(a, b);
  return pair.distance_m > 0 ? pair : overlap(a, b, pair.a);
}

NearestPair separation(const Outline& a, const SitePath& line) {
  const NearestPair pair = nearest_pair(a, line);
  if (pair.distance_m > 0 || line.size() < 2) return pair;
  const SitePoint near = nearest_on_path(line, pair.a).point;
  const SiteVector along = direction(pose_at(line, nearest_on_path(line, near).station_m).facing);
  const Span across = span_along(a, left_of(along));
  const double at_m = near.x * left_of(along).x + near.y * left_of(along).y;
  const double left_m = across.high - at_m, right_m = at_m - across.low;
  const SiteVector way = left_m <= right_m ? left_of(along) : right_of(along);
  const double depth_m = std::max(0.0, std::min(left_m, right_m));
  return {near, near + way * depth_m, -depth_m};
}

}  // namespace yardwright::clear
