#include "geom/sheet/plan_item.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::plan {

namespace {

// What crossing a line with words costs, against 12 for a leader line.
constexpr double over_thing = 20, over_spout = 5, over_line = 4, over_route = 1.5;

struct WeightOfLine {
  double operator()(const OverheadLine&) const { return over_spout; }
  double operator()(const Dimension&) const { return over_spout; }
  double operator()(const Conveyor&) const { return over_line; }
  double operator()(const Tunnel&) const { return over_line; }
  double operator()(const Swale&) const { return over_line; }
  double operator()(const Culvert&) const { return over_line; }
  double operator()(const TileLine&) const { return over_line; }
  double operator()(const TrenchDrain&) const { return over_line; }
  double operator()(const Curb&) const { return over_line; }
  double operator()(const ReceivingDitch&) const { return over_line; }
  double operator()(const Route&) const { return over_route; }
  double operator()(const auto&) const { return 0; }
};

void add_outline(std::vector<Obstacle>& obstacles, const Outline& outline, ItemId owner) {
  if (const Disc* disc = std::get_if<Disc>(&outline))
    obstacles.push_back({*disc, over_thing, true, 0, owner});
  else
    obstacles.push_back({std::get<Polygon>(outline).outer, over_thing, true, 0, owner});
}

void add_item(std::vector<Obstacle>& obstacles, const Site& site, const Item& item) {
  if (const Spout* spout = as<Spout>(item)) {
    const Item *from = find(site, spout->from), *to = find(site, spout->to);
    if (from && to)
      obstacles.push_back({SitePath{place_of(from->thing), place_of(to->thing)}, over_spout, false, 0, item.id});
    return;
  }
  if (const auto outline = footprint(item.thing)) return add_outline(obstacles, *outline, item.id);
  if (as<Pit>(item) != nullptr || as<CatchBasin>(item) != nullptr)
    return add_outline(obstacles, extent(item.thing), item.id);
  const double weight = std::visit(WeightOfLine{}, item.thing);
  if (weight > 0) obstacles.push_back({*path_of(item.thing), weight, false, 0, item.id});
}

}  // namespace

std::vector<Obstacle> obstacles_of(const Site& site) {
  std::vector<Obstacle> obstacles;
  if (!site.lot.corners.empty()) {
    SitePath boundary = site.lot.corners;
    boundary.push_back(boundary.front());
    obstacles.push_back({std::move(boundary), over_line, false, 0, {}});
  }
  for (const Item& item : site.items) add_item(obstacles, site, item);
  return obstacles;
}

}  // namespace yardwright::plan
