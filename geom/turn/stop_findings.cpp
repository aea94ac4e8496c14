#include "geom/site/footprint.hpp"
#include "geom/turn/arrivals.hpp"
#include "geom/turn/driving_findings.hpp"
#include "geom/turn/stop_mends.hpp"

namespace yardwright::turn {

namespace {

Finding stop_finding(const RouteCase& route, const RuleBook& rules, const Item& stop, const Arrival& here,
                     MendSearch& search) {
  Finding finding = judged(Question::turn, rules.at("turn.stop"), Bound::at_most, here.gap_m, {route.item.id, stop.id});
  finding.place = {pose_at(route.line, here.station_m).at, place_of(stop.thing)};
  if (finding.verdict == Verdict::pass) {
    finding.title = title_of(route.item) + " comes to " + title_of(stop);
    return finding;
  }
  finding.title = title_of(route.item) + " does not come to its stop at " + title_of(stop);
  if (!search.may_seek()) return finding;
  finding.mends = stop_mends(route, stop, rules);
  if (finding.mends.empty())
    finding.note = "no small change leads it there: draw it anew, in the order of the stops, or take the stop from it";
  return finding;
}

}  // namespace

Findings stop_findings(const RouteCase& route, const RuleBook& rules, MendSearch& search) {
  Findings findings;
  for (const Arrival& here : arrivals(route.site, route.route().stops, route.line, rules.at("turn.stop").value))
    findings.push_back(stop_finding(route, rules, *find(route.site, here.stop), here, search));
  return findings;
}

}  // namespace yardwright::turn
