#include <cmath>
#include <limits>
#include <optional>

#include "geom/site/footprint.hpp"
#include "geom/turn/height_findings.hpp"

namespace yardwright::turn {

namespace {

constexpr double piece_m = 0.5;
constexpr double tallest_leg_m = 100;  // as the field of a leg allows

/// A thing that runs over the plan at a height: levels in metres above the ground's datum, even between its ends.
struct OverheadRun {
  SitePath path;
  double start_level_m = 0;
  double end_level_m = 0;
};

/// The height over its ground at which a spout leaves or enters; for a bin its eave, which is lower than its inlet.
std::optional<double> spout_height_m(const Thing& thing) {
  if (const Leg* leg = std::get_if<Leg>(&thing)) return leg->discharge_height_m - leg->distributor_drop_m;
  if (const Bin* bin = std::get_if<Bin>(&thing)) return bin->foundation_height_m + bin->eave_height_m;
  if (const Dryer* dryer = std::get_if<Dryer>(&thing)) return dryer->inlet_height_m;
  if (const OverheadHolding* bin = std::get_if<OverheadHolding>(&thing))
    return bin->underside_height_m + bin->wall_height_m;
  return std::nullopt;
}

std::optional<OverheadRun> run_of(const Site& site, const Spout& spout, const DesignSurface& surface) {
  const Item *from = find(site, spout.from), *to = find(site, spout.to);
  if (from == nullptr || to == nullptr) return std::nullopt;
  const auto start_m = spout_height_m(from->thing), end_m = spout_height_m(to->thing);
  if (!start_m || !end_m) return std::nullopt;
  const SitePoint a = place_of(from->thing), b = place_of(to->thing);
  return OverheadRun{{a, b}, surface.level_m(a) + *start_m, surface.level_m(b) + *end_m};
}

std::optional<OverheadRun> run_of(const Conveyor& conveyor, const DesignSurface& surface) {
  if (conveyor.path.size() < 2 || (conveyor.start_height_m < 0 && conveyor.end_height_m < 0)) return std::nullopt;
  return OverheadRun{conveyor.path, surface.level_m(conveyor.path.front()) + conveyor.start_height_m,
                     surface.level_m(conveyor.path.back()) + conveyor.end_height_m};
}

/// Its lowest place over the swept way.
struct Crossing {
  double height_m = std::numeric_limits<double>::infinity();
  SitePoint at;
  double station_ratio = 0;  ///< of the run, from its start
};

std::optional<Crossing> crossing(const RouteCase& route, const OverheadRun& run, const DesignSurface& surface) {
  if (least_clearance(route.driven, route.bodies, run.path).distance_m > 0) return std::nullopt;
  Crossing lowest;
  const double length_m = length(run.path);
  for (double at_m = 0; at_m < length_m; at_m += piece_m) {
    const double to_m = std::min(at_m + piece_m, length_m);
    const SitePath piece{pose_at(run.path, at_m).at, pose_at(run.path, to_m).at};
    if (least_clearance(route.driven, route.bodies, piece).distance_m > 0) continue;
    for (const auto& [point, station_m] : {std::pair{piece[0], at_m}, std::pair{piece[1], to_m}}) {
      const double level_m = std::lerp(run.start_level_m, run.end_level_m, station_m / length_m);
      if (const double height_m = level_m - surface.level_m(point); height_m < lowest.height_m)
        lowest = {height_m, point, station_m / length_m};
    }
  }
  return std::isfinite(lowest.height_m) ? std::optional{lowest} : std::nullopt;
}

Finding overhead_finding(const RouteCase& route, const RuleBook& rules, const Item& item, const Crossing& lowest) {
  const double over_m = lowest.height_m - greatest_height_m(route.vehicle);
  Finding finding =
      judged(Question::turn, rules.at("turn.overhead-over"), Bound::at_least, over_m, {route.item.id, item.id});
  finding.place = {lowest.at};
  finding.title = title_of(item) +
                  (finding.verdict == Verdict::pass ? " hangs clear over the " : " hangs too low over the ") +
                  route.vehicle.name;
  if (finding.verdict != Verdict::pass) finding.note = "raise it, or lead the route around it";
  return finding;
}

/// Its heights were never given: both ends lie at nought.
bool without_heights(const Item& item) {
  const Conveyor* conveyor = as<Conveyor>(item);
  return conveyor != nullptr && conveyor->start_height_m == 0 && conveyor->end_height_m == 0;
}

/// The leg raised by what is short where the spout crosses; its other end stays where it is.
std::optional<Mend> raised_leg(const Site& site, const Spout& spout, const Crossing& lowest, double short_m) {
  const Item* leg = find(site, spout.from);
  if (leg == nullptr || as<Leg>(*leg) == nullptr || lowest.station_ratio > 0.99) return std::nullopt;
  const double by_m = short_m / (1 - lowest.station_ratio) + 1e-9;
  Item higher = *leg;
  double& height_m = std::get<Leg>(higher.thing).discharge_height_m;
  height_m += by_m;
  if (height_m > tallest_leg_m) return std::nullopt;
  return Mend{"raise " + title_of(*leg), Quantity::length, by_m, height_m, {PutItem{higher}}};
}

/// As the mend: a spout by its leg, a conveyor level by both ends.
std::optional<Mend> raised(const Site& site, const Item& item, const Crossing& lowest, const Finding& finding) {
  const double by_m = -finding.margin + 1e-9;
  if (const Spout* spout = as<Spout>(item)) return raised_leg(site, *spout, lowest, by_m);
  if (as<Conveyor>(item) == nullptr) return std::nullopt;
  Item higher = item;
  Conveyor& conveyor = std::get<Conveyor>(higher.thing);
  conveyor.start_height_m += by_m;
  conveyor.end_height_m += by_m;
  return Mend{"raise " + title_of(item), Quantity::length, by_m, conveyor.end_height_m, {PutItem{higher}}};
}

}  // namespace

Findings overhead_findings(const RouteCase& route, const DesignSurface& surface, const RuleBook& rules) {
  Findings findings;
  for (const Item& item : route.site.items) {
    std::optional<OverheadRun> run;
    if (const Spout* spout = as<Spout>(item)) run = run_of(route.site, *spout, surface);
    if (const Conveyor* conveyor = as<Conveyor>(item)) run = run_of(*conveyor, surface);
    const auto lowest = run ? crossing(route, *run, surface) : std::nullopt;
    if (!lowest) continue;
    if (without_heights(item)) {
      findings.push_back(not_checked(Question::turn, "turn.overhead-over", {route.item.id, item.id},
                                     title_of(item) + " crosses " + title_of(route.item),
                                     "its heights are not given; set them, below nought where it runs in a tunnel"));
      continue;
    }
    Finding finding = overhead_finding(route, rules, item, *lowest);
    if (finding.verdict != Verdict::pass) {
      if (auto mend = raised(route.site, item, *lowest, finding)) finding.mends.push_back(std::move(*mend));
    }
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace yardwright::turn
