#include "geom/clear/lot_setback.hpp"

#include "geom/clear/tank_distance.hpp"

namespace yardwright::clear {

namespace {

SitePath edge_path(const Polygon& lot, std::size_t edge) {
  return {lot.outer[edge], lot.outer[(edge + 1) % lot.outer.size()]};
}

/// Even-odd rule; asked for every corner of every thing, so it converts nothing.
bool inside(const Polygon& lot, SitePoint point) {
  bool odd = false;
  for (std::size_t i = 0; i < lot.outer.size(); ++i) {
    const SitePoint a = lot.outer[i], b = lot.outer[(i + 1) % lot.outer.size()];
    if ((a.y > point.y) == (b.y > point.y)) continue;
    if (point.x < a.x + (b.x - a.x) * (point.y - a.y) / (b.y - a.y)) odd = !odd;
  }
  return odd;
}

/// Which edge a point outside lies over: only that one is crossed by it.
bool is_nearest_edge(const Polygon& lot, SitePoint point, double distance_m) {
  for (std::size_t i = 0; i < lot.outer.size(); ++i) {
    const SitePath edge = edge_path(lot, i);
    if (nearest_on_segment(edge[0], edge[1], point).distance_m < distance_m - hair_m) return false;
  }
  return true;
}

/// How far outside the lot an outline reaches over an edge, with the farthest point; 0 where it does not.
NearestPair reach_over(const Solid& solid, const Polygon& lot, const SitePath& edge) {
  NearestPair worst{edge[0], edge[0], 0};
  const auto look_at = [&](SitePoint point, double radius_m) {
    const Nearest near = nearest_on_segment(edge[0], edge[1], point);
    const bool is_inside = inside(lot, point);
    if (!is_inside && !is_nearest_edge(lot, point, near.distance_m)) return;
    const double out_m = (is_inside ? -near.distance_m : near.distance_m) + radius_m;
    if (-out_m < worst.distance_m) worst = {point, near.point, -out_m};
  };
  if (const Disc* disc = std::get_if<Disc>(&solid.outline))
    look_at(disc->centre, disc->radius_m);
  else
    for (const SitePoint& corner : std::get<Polygon>(solid.outline).outer) look_at(corner, 0);
  return worst;
}

bool box_is_inside(const Solid& solid, const Polygon& lot) {
  const Box& box = solid.box;
  for (const SitePoint corner :
       {box.low, SitePoint{box.high.x, box.low.y}, box.high, SitePoint{box.low.x, box.high.y}}) {
    if (!inside(lot, corner)) return false;
  }
  return true;
}

Check edge_check(LotEdge kind, std::string passes, std::string breaks) {
  Check check;
  check.tightest = [kind](const Solid& solid, const Yard& yard, double below_m) -> std::optional<Gap> {
    const Rule* rule = edge_rule(solid, kind, yard.rules);
    if (rule == nullptr) return std::nullopt;
    const auto pair = to_lot_edge(solid, yard, kind);
    if (!pair || pair->distance_m - rule->value >= below_m) return std::nullopt;
    return Gap{rule, pair->distance_m, rule->value, solid.item->id, {}, *pair, Verdict::fail};
  };
  check.passes = std::move(passes);
  check.breaks = std::move(breaks);
  check.note = "setbacks are local: ask the county, and set its figures";
  return check;
}

}  // namespace

const Rule* edge_rule(const Solid& solid, LotEdge kind, const RuleBook& rules) {
  if (solid.part == part::well) return kind == LotEdge::own_field ? nullptr : &rules.at("clear.lot-well");
  if (solid.part == part::lp_tank && kind == LotEdge::neighbour) {
    const Tank& tank = *as<Tank>(*solid.item);
    return &lp_building_rule(tank.water_capacity_m3, tank.underground, rules);
  }
  if (solid.part == part::ammonia_tank && kind != LotEdge::own_field) {
    return &ammonia_line_rule(as<Tank>(*solid.item)->water_capacity_m3, rules);
  }
  if (solid.part == part::conveyor || solid.part == part::truck_scale) return nullptr;
  constexpr std::string_view by_edge[] = {"clear.lot-neighbour", "clear.lot-road", "clear.lot-own-field"};
  return &rules.at(by_edge[static_cast<std::size_t>(kind)]);
}

std::optional<NearestPair> to_lot_edge(const Solid& solid, const Yard& yard, LotEdge kind) {
  std::optional<NearestPair> nearest;
  const bool well_inside = box_is_inside(solid, yard.lot);
  for (std::size_t i = 0; i < yard.lot.outer.size() && i < yard.site.lot.edges.size(); ++i) {
    if (yard.site.lot.edges[i] != kind) continue;
    const SitePath edge = edge_path(yard.lot, i);
    NearestPair pair = nearest_pair(solid.outline, edge);
    if (!well_inside) {
      const NearestPair over = reach_over(solid, yard.lot, edge);
      if (over.distance_m < 0 && (pair.distance_m <= 0 || !inside(yard.lot, pair.a))) pair = over;
    }
    if (!nearest || pair.distance_m < nearest->distance_m) nearest = pair;
  }
  return nearest;
}

std::vector<Check> lot_checks() {
  return {
      edge_check(LotEdge::road, "Setback from the road is kept", "stands too near to the road"),
      edge_check(LotEdge::neighbour, "Setback from the neighbours is kept", "stands too near to the neighbour's line"),
      edge_check(LotEdge::own_field, "Everything stands inside the lot", "reaches over the edge of the lot")};
}

}  // namespace yardwright::clear
