#include "geom/turn/driving_findings.hpp"

#include <algorithm>
#include <cmath>

#include "geom/turn/least_change.hpp"

namespace yardwright::turn {

namespace {

constexpr double grade_step_m = 1.0;
constexpr double widest_radius_m = 60;
constexpr double exact_m = 0.01;
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

/// Points every `grade_step_m` along a line, its end included.
SitePath every_metre(const SitePath& line) {
  const double length_m = length(line);
  SitePath points;
  for (double at_m = 0; at_m < length_m; at_m += grade_step_m) points.push_back(pose_at(line, at_m).at);
  points.push_back(pose_at(line, length_m).at);
  return points;
}

}  // namespace

Finding radius_finding(const RouteCase& route, const RuleBook& rules) {
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
  }
  return finding;
}

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
  const auto passes = [&](double more_m) {
    const Item changed = with_corner_radius(route, route.route().corner_radius_m + more_m);
    return route_case(route.site, changed, route.vehicle).driven.greatest_hitch.angle.as_degrees() <= rule.value;
  };
  if (const auto more_m = least_that_passes(widest_radius_m, exact_m, passes)) {
    finding.mends.push_back(rounded(route, route.route().corner_radius_m + *more_m));
  }
  return finding;
}

Steepest steepest_grade(const SitePath& line, const DesignSurface& surface, double over_m) {
  Steepest steepest;
  const SitePath points = every_metre(line);
  const auto window = std::clamp<std::size_t>(static_cast<std::size_t>(std::lround(over_m / grade_step_m)), 1,
                                              std::max<std::size_t>(points.size(), 2) - 1);
  for (std::size_t i = 0; i + window < points.size(); ++i) {
    double run_m = 0;
    for (std::size_t k = i; k < i + window; ++k) run_m += distance(points[k], points[k + 1]);
    const double rise_m = surface.level_m(points[i + window]) - surface.level_m(points[i]);
    if (run_m <= 0 || std::abs(rise_m / run_m) < steepest.grade_ratio) continue;
    steepest = {std::abs(rise_m / run_m), points[i + window / 2]};
  }
  return steepest;
}

Finding grade_finding(const RouteCase& route, const DesignSurface& surface, const RuleBook& rules) {
  const Rule& rule = rules.at("turn.grade");
  if (!knows(surface, route.line)) {
    return not_checked(Question::turn, rule.id, {route.item.id}, "Grade along " + title_of(route.item),
                       "the ground is not known along the whole way; bring it in with yardwright ground");
  }
  const Steepest steepest = steepest_grade(route.line, surface, rules.at("turn.grade-length").value);
  Finding finding =
      judged(Question::turn, rule, Bound::at_most, steepest.grade_ratio, {route.item.id}, Verdict::caution);
  finding.place = {steepest.at};
  finding.title =
      finding.verdict == Verdict::pass ? "Grade along " + title_of(route.item) : title_of(route.item) + " is steep";
  if (finding.verdict != Verdict::pass) finding.note = "grade it with a pad, or lead it along the slope";
  return finding;
}

}  // namespace yardwright::turn
