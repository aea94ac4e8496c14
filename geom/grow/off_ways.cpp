#include <algorithm>

#include "geom/grow/keep_off.hpp"

namespace yardwright::grow {

namespace {

constexpr double off_line_m = 0.05;  // a corner of a swept edge that lies no farther off a straight run is left out

/// With fewer corners, and too large by no more than twice `off_line_m` for what is left out.
Region made_simple(const Region& region) {
  Region simple;
  for (const Polygon& polygon : region) {
    const auto ring = [](std::vector<SitePoint> points) {
      if (points.empty()) return points;
      points.push_back(points.front());
      points = simplified(points, off_line_m);
      points.pop_back();
      return points;
    };
    Polygon& one = simple.emplace_back(Polygon{ring(polygon.outer), {}});
    if (one.outer.size() < 3) simple.pop_back();
    for (const auto& hole : polygon.holes) {
      if (auto fewer = ring(hole); fewer.size() >= 3 && !simple.empty()) one.holes.push_back(std::move(fewer));
    }
  }
  return simple;
}

Region grown_around(const Region& region, const Outline& shape, double by_m) {
  const Region simple = made_simple(region);
  if (const Disc* disc = std::get_if<Disc>(&shape)) return offset(simple, disc->radius_m + by_m + off_line_m, 90);
  return united(pieces_grown_by(simple, shape, by_m + off_line_m));
}

bool may_be_driven_over(const Thing& thing) {
  const Receiving* dump = std::get_if<Receiving>(&thing);
  return std::holds_alternative<Scale>(thing) || dump != nullptr;
}

void off_trucks(KeepOffs& all, const Newcomer& newcomer) {
  if (may_be_driven_over(newcomer.item.thing)) return;
  const Rule &need = newcomer.rules.at("turn.clearance"), &advice = newcomer.rules.at("turn.clearance-advice");
  for (const turn::DrivenRoute& route : newcomer.answers.turn->routes) {
    all.push_back({need.id, route.route, "stands in the way of trucks on", need.value, Verdict::fail,
                   grown_around(route.swept, newcomer.behind, need.value)});
    all.push_back({advice.id, route.route, "leaves trucks little room on", advice.value, Verdict::caution,
                   grown_around(route.swept, newcomer.behind, advice.value)});
  }
}

/// Earth and pipes that lead water, walls that hold the ground, open pits.
bool leads_water(const Thing& thing) {
  return std::visit(
      []<class Kind>(const Kind&) {
        return std::same_as<Kind, Swale> || std::same_as<Kind, Berm> || std::same_as<Kind, Culvert> ||
               std::same_as<Kind, TrenchDrain> || std::same_as<Kind, TileLine> || std::same_as<Kind, CatchBasin> ||
               std::same_as<Kind, ReceivingDitch> || std::same_as<Kind, Curb> || std::same_as<Kind, RetainingWall> ||
               std::same_as<Kind, Pit>;
      },
      thing);
}

void off_drawn(KeepOffs& all, const Newcomer& newcomer, std::string_view rule_id, const Item& item, std::string why) {
  const Rule& rule = newcomer.rules.at(rule_id);
  all.push_back({rule.id, item.id, std::move(why), rule.value, Verdict::fail,
                 outline_grown_by(extent(item.thing), newcomer.behind, rule.value)});
}

}  // namespace

KeepOffs off_ways(const Newcomer& newcomer) {
  KeepOffs all;
  off_trucks(all, newcomer);
  for (const Item& item : newcomer.site.items) {
    if (as<Drive>(item) != nullptr && !may_be_driven_over(newcomer.item.thing))
      off_drawn(all, newcomer, "grow.off-drives", item, "stands on");
    if (leads_water(item.thing)) off_drawn(all, newcomer, "grow.off-drains", item, "stands on");
  }
  return all;
}

}  // namespace yardwright::grow
