#include "geom/turn/turn.hpp"

#include <algorithm>

#include "geom/turn/driving_findings.hpp"
#include "geom/turn/height_findings.hpp"
#include "geom/turn/room_findings.hpp"
#include "geom/turn/swept_path.hpp"

namespace yardwright::turn {

namespace {

void append(Findings& to, Findings more) { std::ranges::move(more, std::back_inserter(to)); }

void judge(const RouteCase& route, const DesignSurface& surface, const RuleBook& rules, Answer& answer) {
  DrivenRoute driven{route.item.id, route.course, route.driven, swept_area(route.driven, bodies_of(route.vehicle)), clearances_of(route)};
  answer.findings.push_back(radius_finding(route, rules));
  if (route.vehicle.units.size() > 1) answer.findings.push_back(hitch_finding(route, rules));
  append(answer.findings, room_findings(route, rules, driven.clearances));
  append(answer.findings, opening_findings(route, rules));
  append(answer.findings, overhead_findings(route, surface, rules));
  answer.findings.push_back(grade_finding(route, surface, rules));
  answer.routes.push_back(std::move(driven));
}

Finding cannot_drive(const Item& item, std::string why) {
  return not_checked(Question::turn, "turn.radius", {item.id}, title_of(item), std::move(why));
}

void check_route(const Site& site, const DesignSurface& surface, const Catalogs& catalogs, const Item& item, Answer& answer) {
  const Route& route = *as<Route>(item);
  const Vehicle* vehicle = find(catalogs.vehicles, route.vehicle);
  if (vehicle == nullptr) {
    answer.findings.push_back(cannot_drive(item, "the vehicle catalogue has no \"" + route.vehicle + "\"; choose one that it has"));
    return;
  }
  const RouteCase one = route_case(site, item, *vehicle);
  if (one.driven.stations() == 0) answer.findings.push_back(cannot_drive(item, "its path has no length; draw where it goes"));
  else judge(one, surface, catalogs.rules, answer);
}

}  // namespace

Answer ask(const Site& site, const DesignSurface& surface, const Catalogs& catalogs) {
  Answer answer;
  bool any = false;
  for_each<Route>(site, [&](const Item& item, const Route&) {
    any = true;
    check_route(site, surface, catalogs, item, answer);
  });
  if (!any) {
    answer.findings.push_back(not_checked(Question::turn, "turn.radius", {}, "Trucks through the yard", "there is no route yet; draw one"));
  }
  sort_by_need(answer.findings);
  return answer;
}

}  // namespace yardwright::turn
