#include "geom/turn/turn.hpp"

#include <algorithm>

#include "geom/turn/driving_findings.hpp"
#include "geom/turn/height_findings.hpp"
#include "geom/turn/room_findings.hpp"
#include "geom/turn/swept_path.hpp"

namespace yardwright::turn {

namespace {

void append(Findings& to, Findings more) { std::ranges::move(more, std::back_inserter(to)); }

/// As it was driven before, where it is drawn as it was.
const DrivenRoute* driven_before(const Answer* before, const Item& item) {
  if (before == nullptr) return nullptr;
  const auto found = std::ranges::find_if(
      before->routes, [&](const DrivenRoute& one) { return one.route == item.id && one.drawn == *as<Route>(item); });
  return found == before->routes.end() ? nullptr : &*found;
}

class Asker {
 public:
  Asker(const Site& site, const DesignSurface& surface, const Catalogs& catalogs, const Asking& asking)
      : site_{site}, surface_{surface}, catalogs_{catalogs}, before_{asking.before}, search_{asking.search} {}

  void ask(const Item& item) {
    const Route& route = *as<Route>(item);
    const Vehicle* vehicle = find(catalogs_.vehicles, route.vehicle);
    if (vehicle == nullptr) {
      return cannot_drive(item, "the vehicle catalogue has no \"" + route.vehicle + "\"; choose one that it has");
    }
    const DrivenRoute* known = driven_before(before_, item);
    const RouteCase one = known == nullptr ? route_case(site_, item, *vehicle)
                                           : route_case(site_, item, *vehicle, known->course, known->driven);
    if (one.driven.stations() == 0) return cannot_drive(item, "its path has no length; draw where it goes");
    Region swept = known == nullptr ? swept_area(one.driven, one.bodies.bodies) : known->swept;
    judge(one, {item.id, route, one.course, one.driven, std::move(swept), clearances_of(one)});
  }

  Answer answer() && {
    sort_by_need(answer_.findings);
    answer_.mends_sought = !search_.left_some();
    return std::move(answer_);
  }

 private:
  void cannot_drive(const Item& item, std::string why) {
    answer_.findings.push_back(not_checked(Question::turn, "turn.radius", {item.id}, title_of(item), std::move(why)));
  }

  void judge(const RouteCase& route, DrivenRoute driven) {
    const RuleBook& rules = catalogs_.rules;
    Findings& findings = answer_.findings;
    findings.push_back(radius_finding(route, rules, search_));
    if (route.vehicle.units.size() > 1) findings.push_back(hitch_finding(route, rules, search_));
    append(findings, room_findings(route, rules, driven.clearances, search_));
    append(findings, opening_findings(route, rules));
    append(findings, overhead_findings(route, surface_, rules));
    findings.push_back(grade_finding(route, surface_, rules, search_));
    append(findings, stop_findings(route, rules, search_));
    answer_.routes.push_back(std::move(driven));
  }

  const Site& site_;
  const DesignSurface& surface_;
  const Catalogs& catalogs_;
  const Answer* before_;
  MendSearch search_;
  Answer answer_;
};

}  // namespace

Answer ask(const Site& site, const DesignSurface& surface, const Catalogs& catalogs, const Asking& asking) {
  bool any = false;
  Asker asker{site, surface, catalogs, asking};
  for_each<Route>(site, [&](const Item& item, const Route&) {
    any = true;
    asker.ask(item);
  });
  if (any) return std::move(asker).answer();
  return {
      {not_checked(Question::turn, "turn.radius", {}, "Trucks through the yard", "there is no route yet; draw one")},
      {}};
}

}  // namespace yardwright::turn
