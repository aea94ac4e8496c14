#include <algorithm>
#include <cmath>
#include <functional>

#include "geom/site/footprint.hpp"
#include "geom/turn/height_findings.hpp"

namespace yardwright::turn {

namespace {

/// One measure of an opening against the vehicle, and the field that mends it.
struct Opening {
  std::string_view rule;
  double clear_m = 0;    ///< of the opening
  double vehicle_m = 0;  ///< what has to go through
  std::string short_of;  ///< title where it falls short
  std::string mend;
  std::function<void(Thing&, double)> set;
};

Finding opening_finding(const RouteCase& route, const RuleBook& rules, const Item& item, const Opening& opening) {
  const Rule& rule = rules.at(opening.rule);
  Finding finding =
      judged(Question::turn, rule, Bound::at_least, opening.clear_m - opening.vehicle_m, {route.item.id, item.id});
  finding.place = {place_of(item.thing)};
  finding.title = finding.verdict == Verdict::pass ? route.vehicle.name + " goes through " + title_of(item)
                                                   : title_of(item) + " " + opening.short_of + " " + route.vehicle.name;
  if (finding.verdict == Verdict::pass) return finding;
  double needed_m = opening.vehicle_m + rule.value;
  while (needed_m - opening.vehicle_m < rule.value) needed_m = std::nextafter(needed_m, 1e9);
  Item mended = item;
  opening.set(mended.thing, needed_m);
  finding.mends.push_back(
      {opening.mend + title_of(item), Quantity::length, needed_m - opening.clear_m, needed_m, {PutItem{mended}}});
  return finding;
}

void widen_door(Thing& thing, double to_m) {
  Receiving& dump = std::get<Receiving>(thing);
  dump.width_m += std::max(0.0, to_m - dump.door_width_m);
  dump.door_width_m = to_m;
}

void raise_door(Thing& thing, double to_m) {
  Receiving& dump = std::get<Receiving>(thing);
  dump.door_height_m = to_m;
  dump.clear_height_m = std::max(dump.clear_height_m, to_m);
  dump.height_m = std::max(dump.height_m, to_m);
}

void raise_ceiling(Thing& thing, double to_m) {
  Receiving& dump = std::get<Receiving>(thing);
  dump.clear_height_m = to_m;
  dump.height_m = std::max(dump.height_m, to_m);
}

std::vector<Opening> openings_of(const Receiving& dump, const Vehicle& vehicle) {
  if (dump.type == ReceivingKind::open_dump) return {};
  std::vector<Opening> openings{{"turn.door-width-over", dump.door_width_m, greatest_width_m(vehicle),
                                 "has doors too narrow for", "widen the doors of ", widen_door},
                                {"turn.door-height-over", dump.door_height_m, greatest_height_m(vehicle),
                                 "has doors too low for", "raise the doors of ", raise_door}};
  if (vehicle.bed) {
    openings.push_back({"turn.bed-clear", dump.clear_height_m, top_m(*vehicle.bed), "is too low for the raised bed of",
                        "raise the clear height of ", raise_ceiling});
  }
  return openings;
}

std::vector<Opening> openings_of(const Gate& gate, const Vehicle& vehicle) {
  return {{"turn.door-width-over", gate.width_m, greatest_width_m(vehicle), "is too narrow for", "widen ",
           [](Thing& thing, double to_m) { std::get<Gate>(thing).width_m = to_m; }}};
}

std::vector<Opening> openings_of(const OverheadHolding& bin, const Vehicle& vehicle) {
  return {{"turn.door-height-over", bin.underside_height_m, greatest_height_m(vehicle), "hangs too low for", "raise ",
           [](Thing& thing, double to_m) { std::get<OverheadHolding>(thing).underside_height_m = to_m; }}};
}

/// None where the route does not go through.
std::vector<Opening> openings_on(const RouteCase& route, const Item& item) {
  if (const Gate* gate = as<Gate>(item)) {
    return goes_over(route, extent(item.thing)) ? openings_of(*gate, route.vehicle) : std::vector<Opening>{};
  }
  if (as<Receiving>(item) == nullptr && as<OverheadHolding>(item) == nullptr) return {};
  if (!goes_over(route, *footprint(item.thing))) return {};
  if (const Receiving* dump = as<Receiving>(item)) return openings_of(*dump, route.vehicle);
  if (const OverheadHolding* bin = as<OverheadHolding>(item)) return openings_of(*bin, route.vehicle);
  return {};
}

}  // namespace

Findings opening_findings(const RouteCase& route, const RuleBook& rules) {
  Findings findings;
  for (const Item& item : route.site.items) {
    for (const Opening& opening : openings_on(route, item))
      findings.push_back(opening_finding(route, rules, item, opening));
  }
  return findings;
}

}  // namespace yardwright::turn
