#include "geom/turn/driving_findings.hpp"

#include <algorithm>
#include <cmath>

#include "geom/turn/grade.hpp"
#include "geom/turn/grade_mends.hpp"
#include "geom/turn/least_change.hpp"
#include "geom/turn/radius_mends.hpp"

namespace yardwright::turn {

namespace {

constexpr double widest_radius_m = 60;
constexpr double exact_m = 0.01;
constexpr double coarse_m = 0.1;  // of a radius for which corners are moved
/// A straight route has no tightest corner; its radius is told as this.
constexpr double straight_m = 1000;

Item with_corner_radius(const RouteCase& route, double radius_m) {
  Item changed = route.item;
  std::get<Route>(changed.thing).corner_radius_m = radius_m;
  return changed;
}

/// Rounds the corners to `becomes_m`, where the legs have room for it.
Mend rounded(const RouteCase& route, double becomes_m) {
  return {"round the corners of " + title_of(route.item) + " wider",
          Quantity::length,
          becomes_m - route.route().corner_radius_m,
          becomes_m,
          {PutItem{with_corner_radius(route, becomes_m)}}};
}

double told_radius_m(const Course& course) { return std::min(least_radius_m(course), straight_m); }

bool knows(const DesignSurface& surface, const SitePath& line) {
  const GridFrame& frame = surface.design.frame();
  return surface.known() && std::ranges::all_of(line, [&](SitePoint p) { return frame.contains(frame.cell_of(p)); });
}

}  // namespace

Finding radius_finding(const RouteCase& route, const RuleBook& rules, MendSearch& search) {
  Rule rule = rules.at("turn.radius");
  rule.value += route.vehicle.least_front_radius_m;
  const double radius_m = told_radius_m(route.course);
  Finding finding = judged(Question::turn, rule, Bound::at_least, radius_m, {route.item.id});
  finding.place = {point_on(route.course, station_of_least_radius_m(route.course)).at};
  finding.title = title_of(route.item) +
                  (finding.verdict == Verdict::pass ? " turns no tighter than the " : " turns tighter than the ") +
                  route.vehicle.name + (finding.verdict == Verdict::pass ? " can" : " is able to");
  if (finding.verdict == Verdict::pass) return finding;
  if (least_radius_m(course_of(route.route().path, rule.value)) >= rule.value - 1e-9) {
    finding.mends.push_back(rounded(route, rule.value * (1 + 1e-12)));
  } else {
    finding.note = "the legs between its corners are too short for that radius; draw the corners farther apart";
    auto mend = search.may_seek() ? roomier_route(route, rule.value) : std::nullopt;
    if (mend) finding.mends.push_back(std::move(*mend));
  }
  return finding;
}

namespace {

double greatest_hitch_deg(const RouteCase& route, const Item& changed) {
  return route_case(route.site, changed, route.vehicle).driven.greatest_hitch.angle.as_degrees();
}

/// Wider corners; where the legs have no room for them, corners moved until they have.
std::optional<Mend> unfolded(const RouteCase& route, double most_deg) {
  const double radius_m = route.route().corner_radius_m;
  const auto more_m = least_that_passes(widest_radius_m, exact_m, [&](double more) {
    return greatest_hitch_deg(route, with_corner_radius(route, radius_m + more)) <= most_deg;
  });
  if (more_m) return rounded(route, radius_m + *more_m);
  std::optional<Mend> roomier;
  const auto wider_m = least_that_passes(widest_radius_m, coarse_m, [&](double wider) {
    roomier = roomier_route(route, wider);
    return roomier && greatest_hitch_deg(route, std::get<PutItem>(roomier->edits.front()).item) <= most_deg;
  });
  return wider_m ? roomier_route(route, *wider_m) : std::nullopt;
}

}  // namespace

Finding hitch_finding(const RouteCase& route, const RuleBook& rules, MendSearch& search) {
  Rule rule = rules.at("turn.hitch-angle");
  rule.value += route.vehicle.greatest_hitch_angle.as_degrees();
  const HitchAngle& hitch = route.driven.greatest_hitch;
  Finding finding = judged(Question::turn, rule, Bound::at_most, hitch.angle.as_degrees(), {route.item.id});
  finding.place = {point_on(route.course, hitch.station_m).at};
  finding.title =
      route.vehicle.name +
      (finding.verdict == Verdict::pass ? " keeps its hitch within its limit on " : " folds too far at a hitch on ") +
      title_of(route.item);
  if (finding.verdict == Verdict::pass || !search.may_seek()) return finding;
  if (auto mend = unfolded(route, rule.value))
    finding.mends.push_back(std::move(*mend));
  else
    finding.note =
        "no wider turn fits between its corners: draw it with fewer turns, or drive it with a shorter vehicle";
  return finding;
}

Finding grade_finding(const RouteCase& route, const DesignSurface& surface, const RuleBook& rules, MendSearch& search) {
  const Rule& rule = rules.at("turn.grade");
  if (!knows(surface, route.line)) {
    return not_checked(
        Question::turn, rule.id, {route.item.id}, "Grade along " + title_of(route.item),
        "the ground is not known along the whole way; bring in its levels (yardwright ground, or the file menu)");
  }
  const double over_m = rules.at("turn.grade-length").value;
  const Steepest steepest = steepest_grade(route.line, surface, over_m);
  Finding finding =
      judged(Question::turn, rule, Bound::at_most, steepest.grade_ratio, {route.item.id}, Verdict::caution);
  finding.place = {steepest.at};
  finding.title =
      finding.verdict == Verdict::pass ? "Grade along " + title_of(route.item) : title_of(route.item) + " is steep";
  if (finding.verdict == Verdict::pass || !search.may_seek()) return finding;
  finding.mends = grade_mends(route, surface, {rule.value, over_m}, steepest.grade_ratio);
  if (finding.mends.empty()) finding.note = "grading the drive under it is not enough: lead it along the slope";
  return finding;
}

}  // namespace yardwright::turn
