#include "geom/turn/room_findings.hpp"

#include <cmath>
#include <map>
#include <set>

#include "geom/turn/room_mends.hpp"

namespace yardwright::turn {

namespace {

std::string name_of(const RouteCase& route, ItemId id) {
  const Item* item = find(route.site, id);
  return item == nullptr ? "the neighbour's lot edge" : title_of(*item);
}

std::string title_of(const RouteCase& route, const ItemClearance& near, Verdict verdict) {
  const std::string what = name_of(route, near.item), who = route.vehicle.name;
  if (verdict == Verdict::pass) return who + " passes " + what;
  if (near.clearance.distance_m > 0) return who + " passes " + what + " too near";
  return near.rule == "turn.pit-edge" ? "A tyre of the " + who + " runs into the pit of " + what
                                      : who + " runs into " + what;
}

Finding room_finding(const RouteCase& route, const Rule& rule, const ItemClearance& near, Verdict worse,
                     MendSearch& search) {
  std::vector<ItemId> items{route.item.id};
  if (near.item) items.push_back(near.item);
  Finding finding = judged(Question::turn, rule, Bound::at_least, near.clearance.distance_m, items, worse);
  finding.title = title_of(route, near, finding.verdict);
  finding.place = {near.clearance.on_vehicle, near.clearance.on_obstacle};
  if (finding.verdict != Verdict::pass) finding.mends = room_mends(route, near, rule.value, search);
  return finding;
}

/// Whether advice asks for more room than the rule does.
bool wants_more(const ItemClearance& near, const RuleBook& rules) {
  return near.rule == "turn.clearance" && near.clearance.distance_m < rules.at("turn.clearance-advice").value;
}

}  // namespace

std::vector<ItemClearance> clearances_of(const RouteCase& route) {
  std::vector<ItemClearance> all;
  const auto add = [&](ItemId item, const Obstacle& obstacle) {
    const Clearance clearance = clearance_to(route, obstacle);
    if (std::isfinite(clearance.distance_m)) all.push_back({item, std::string{obstacle.rule}, clearance});
  };
  for (const Item& item : route.site.items) {
    for (const Obstacle& obstacle : obstacles_of(item, route)) add(item.id, obstacle);
  }
  add({}, neighbour_edges(route.site));
  return all;
}

Findings room_findings(const RouteCase& route, const RuleBook& rules, const std::vector<ItemClearance>& clearances,
                       MendSearch& search) {
  Findings findings;
  std::map<std::string, const ItemClearance*> nearest_passing;
  std::set<std::string> short_of;
  for (const ItemClearance& near : clearances) {
    const Rule& rule = rules.at(near.rule);
    if (near.clearance.distance_m < rule.value) {
      findings.push_back(room_finding(route, rule, near, Verdict::fail, search));
      short_of.insert(near.rule);
    } else if (wants_more(near, rules)) {
      findings.push_back(room_finding(route, rules.at("turn.clearance-advice"), near, Verdict::caution, search));
      short_of.insert(near.rule);
    } else {
      const ItemClearance*& kept = nearest_passing[near.rule];
      if (kept == nullptr || near.clearance.distance_m < kept->clearance.distance_m) kept = &near;
    }
  }
  for (const auto& [rule, near] : nearest_passing) {
    if (!short_of.contains(rule)) findings.push_back(room_finding(route, rules.at(rule), *near, Verdict::fail, search));
  }
  return findings;
}

}  // namespace yardwright::turn
