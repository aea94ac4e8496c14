#include <algorithm>
#include <limits>

#include "geom/site/footprint.hpp"
#include "geom/turn/driving_findings.hpp"

namespace yardwright::turn {

namespace {

constexpr double step_m = 0.5;

/// Where a line comes nearest to a stop, from a station on.
struct Arrival {
  double gap_m = std::numeric_limits<double>::infinity();
  double station_m = 0;
};

Arrival arrival(const SitePath& line, double from_m, const Outline& stop) {
  Arrival nearest{std::numeric_limits<double>::infinity(), from_m};
  const double length_m = length(line);
  for (double at_m = from_m; at_m < length_m && nearest.gap_m > 0; at_m += step_m) {
    const double to_m = std::min(at_m + step_m, length_m);
    const double gap_m = nearest_pair(stop, SitePath{pose_at(line, at_m).at, pose_at(line, to_m).at}).distance_m;
    if (gap_m < nearest.gap_m) nearest = {gap_m, to_m};
  }
  return nearest;
}

Finding stop_finding(const RouteCase& route, const Rule& rule, const Item& stop, const Arrival& here) {
  Finding finding = judged(Question::turn, rule, Bound::at_most, here.gap_m, {route.item.id, stop.id});
  finding.place = {pose_at(route.line, here.station_m).at, place_of(stop.thing)};
  if (finding.verdict == Verdict::pass)
    finding.title = title_of(route.item) + " comes to " + title_of(stop);
  else
    finding.title = title_of(route.item) + " does not come to its stop at " + title_of(stop);
  if (finding.verdict != Verdict::pass)
    finding.note = "draw it past the stop, in the order of the stops, or take the stop from it";
  return finding;
}

}  // namespace

Findings stop_findings(const RouteCase& route, const RuleBook& rules) {
  const Rule& rule = rules.at("turn.stop");
  Findings findings;
  double from_m = 0;
  for (const ItemId id : route.route().stops) {
    const Item* stop = find(route.site, id);
    if (stop == nullptr || route.line.size() < 2) continue;
    const Arrival here = arrival(route.line, from_m, extent(stop->thing));
    findings.push_back(stop_finding(route, rule, *stop, here));
    if (here.gap_m <= rule.value) from_m = here.station_m;
  }
  return findings;
}

}  // namespace yardwright::turn
