#include "geom/clear/line_setback.hpp"

#include <algorithm>

#include "geom/clear/line_distance.hpp"

namespace yardwright::clear {

namespace {

/// A line as one solid sees it.
struct Seen {
  const Item* line;
  NearestPair pair;
  double conductor_m;  ///< above the ground at the solid
};

Seen seen_from(const Solid& solid, const Item& item, const OverheadLine& line, const Yard& yard) {
  const NearestPair pair = separation(solid.outline, line.path);
  const SitePoint under = nearest_on_path(line.path, pair.b).point;
  const double rise_m = yard.surface.level_m(under) - yard.surface.level_m(place_of(solid.item->thing));
  return {&item, pair, line.lowest_conductor_m + rise_m};
}

/// What a line demands of a solid: nothing where the check is not about that solid.
using Demand = std::optional<Gap> (*)(const Solid&, const Seen&, const Yard&);

std::optional<Gap> to_line(const Solid& solid, const Item& item, const Yard& yard, Demand demand) {
  const OverheadLine& line = *as<OverheadLine>(item);
  return line.path.size() < 2 ? std::nullopt : demand(solid, seen_from(solid, item, line, yard), yard);
}

std::optional<Gap> tightest_line(const Solid& solid, const Yard& yard, double below_m, Demand demand) {
  std::optional<Gap> tightest;
  for_each<OverheadLine>(yard.site, [&](const Item& item, const OverheadLine&) {
    auto gap = to_line(solid, item, yard, demand);
    if (!gap || gap->margin_m() >= below_m) return;
    below_m = gap->margin_m();
    tightest = std::move(gap);
  });
  return tightest;
}

Gap gap_to(const Solid& solid, const Seen& seen, const Rule& rule, std::optional<double> required_m, Verdict worse) {
  // A line that clears at any distance demands nothing, not even of a line straight above.
  const double measured_m = required_m ? seen.pair.distance_m : std::max(0.0, seen.pair.distance_m);
  return {&rule, measured_m, required_m.value_or(0.0), solid.item->id, seen.line->id, seen.pair, worse};
}

bool is_filled_by_spout(const Item& item, const Site& site) {
  return std::ranges::any_of(site.items, [&](const Item& other) {
    const Spout* spout = as<Spout>(other);
    return spout != nullptr && spout->to == item.id;
  });
}

/// A bin that no spout fills is filled by a portable auger; where one does, an auger may still be wanted.
std::optional<Gap> portable_demand(const Solid& solid, const Seen& seen, const Yard& yard) {
  if (solid.part != part::bin && solid.part != part::overhead_bin) return std::nullopt;
  const double port_m = *port_height_m(solid.item->thing, yard.rules);
  const Verdict worse = is_filled_by_spout(*solid.item, yard.site) ? Verdict::caution : Verdict::fail;
  return gap_to(solid, seen, yard.rules.at("clear.line-portable"),
                portable_distance_m(port_m, seen.conductor_m, yard.rules), worse);
}

std::optional<Gap> permanent_demand(const Solid& solid, const Seen& seen, const Yard& yard) {
  const auto top_m = port_height_m(solid.item->thing, yard.rules);
  if (!top_m) return std::nullopt;
  return gap_to(solid, seen, yard.rules.at("clear.line-permanent"),
                permanent_distance_m(*top_m, seen.conductor_m, yard.rules), Verdict::fail);
}

std::optional<double> roof_height_m(const Thing& thing) {
  return std::visit(
      [](const auto& kind) -> std::optional<double> {
        if constexpr (requires {
                        kind.height_m;
                        kind.width_m;
                        kind.facing;
                      })
          return kind.height_m;
        else
          return std::nullopt;
      },
      thing);
}

/// Only of roofs that the line passes straight over: measured upward.
std::optional<Gap> roof_demand(const Solid& solid, const Seen& seen, const Yard& yard) {
  const auto roof_m = roof_height_m(solid.item->thing);
  if (!roof_m || seen.pair.distance_m > 0) return std::nullopt;
  const Rule& rule = yard.rules.at("clear.line-roof");
  return Gap{&rule, seen.conductor_m - *roof_m, rule.value, solid.item->id, seen.line->id, seen.pair, Verdict::fail};
}

Check line_check(Parts parts, Demand demand, std::string passes, std::string breaks, std::string note) {
  Check check;
  check.tightest = [demand](const Solid& solid, const Yard& yard, double below_m) {
    return tightest_line(solid, yard, below_m, demand);
  };
  check.to_line = [demand](const Solid& solid, const Item& line, const Yard& yard) {
    return to_line(solid, line, yard, demand);
  };
  check.starts_from = parts;
  check.passes = std::move(passes);
  check.breaks = std::move(breaks);
  check.note = std::move(note);
  return check;
}

double bin_port_m(const Bin& bin) {
  return bin.foundation_height_m + bin.eave_height_m + bin.diameter_m / 2 * tan(bin.roof_slope) + bin.inlet_over_peak_m;
}

double overhead_port_m(const OverheadHolding& bin) {
  const double cones_m = bin.diameter_m / 2 * (tan(bin.hopper_angle) + tan(bin.roof_slope));
  return bin.underside_height_m + bin.wall_height_m + cones_m + bin.inlet_over_peak_m;
}

}  // namespace

std::optional<double> port_height_m(const Thing& thing, const RuleBook& rules) {
  if (const Bin* one = std::get_if<Bin>(&thing)) return bin_port_m(*one);
  if (const OverheadHolding* one = std::get_if<OverheadHolding>(&thing)) return overhead_port_m(*one);
  if (const Leg* one = std::get_if<Leg>(&thing)) return one->discharge_height_m + rules.at("clear.leg-head").value;
  if (const Conveyor* one = std::get_if<Conveyor>(&thing))
    return std::max({0.0, one->start_height_m, one->end_height_m});
  return std::nullopt;
}

double most_asked_m(const Thing& thing, const OverheadLine& line, double over_m, const RuleBook& rules) {
  const auto port_m = port_height_m(thing, rules);
  if (!port_m) return 0;
  const double conductor_m = line.lowest_conductor_m - over_m;
  return std::max(portable_distance_m(*port_m, conductor_m, rules).value_or(0),
                  permanent_distance_m(*port_m, conductor_m, rules).value_or(0));
}

std::vector<Check> line_checks(const Yard& yard) {
  constexpr Parts any_bin = part::bin | part::overhead_bin;
  constexpr Parts roofed = part::farm_building | part::control_room | part::dwelling | part::dryer | part::receiving;
  const std::string flat = yard.surface.known() ? "" : "; the ground is taken as level";
  return {
      line_check(any_bin, portable_demand, "Overhead lines leave room for a portable auger", "is filled too near to",
                 "the sloped envelope of the loading side, taken on every side: ask the utility" + flat),
      line_check(any_bin | part::leg | part::conveyor, permanent_demand,
                 "Overhead lines stand off from ports, legs and conveyors", "stands too near to",
                 "the sloped part of a permanent machine's envelope is the utility's to tell: ask it" + flat),
      line_check(roofed, roof_demand, "Overhead lines pass high over roofs", "stands under", "ask the utility" + flat)};
}

}  // namespace yardwright::clear
