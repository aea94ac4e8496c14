#include "geom/clear/spacing.hpp"

#include <algorithm>

#include "geom/clear/tank_distance.hpp"

namespace yardwright::clear {

namespace {

constexpr Parts any_building = part::farm_building | part::control_room | part::dwelling | part::receiving;
constexpr Parts any_bin = part::bin | part::overhead_bin;
constexpr double small_tank_m3 = 125 * 231 * 0.0254 * 0.0254 * 0.0254;

struct Row {
  std::string_view rule;
  Parts subject, other;
  Verdict worse;
  std::string_view passes, note;
};

constexpr Row rows[] = {
    {"clear.bin-bin", part::bin, part::bin, Verdict::caution, "Bins stand apart",
     "room to build, to seal and to reach the anchor bolts"},
    {"clear.dryer-building", part::dryer, any_building | part::bin, Verdict::fail,
     "The dryer stands off from buildings and bins", "a dryer burns: keep fuel, weeds and walls away from it"},
    {"clear.dwelling-bin", part::dwelling, any_bin, Verdict::caution, "Bins stand off from dwellings",
     "a local matter: ask the county, and set its figure"},
    {"clear.dwelling-dryer", part::dwelling, part::dryer, Verdict::caution, "The dryer stands off from dwellings",
     "noise follows the fan and what shields it, not the distance alone"},
    {"clear.well-building", part::well, any_building | any_bin | part::dryer | part::leg, Verdict::fail,
     "Wells stand off from foundations", "a local matter: ask the county, and set its figure"},
    {"clear.well-ammonia", part::well, part::ammonia_tank, Verdict::fail, "Ammonia stands off from wells", ""},
};

/// Calls `use(subject, other)` for either way round, where the two are of these parts.
template <class Use>
std::optional<Gap> either_way(const Solid& one, const Solid& two, Parts subject, Parts other, Use use) {
  if ((one.part & subject) != 0 && (two.part & other) != 0) return use(one, two);
  if ((two.part & subject) != 0 && (one.part & other) != 0) return use(two, one);
  return std::nullopt;
}

std::optional<Gap> gap_of(const Solid& a, const Solid& b, const Rule& rule, double required_m, Verdict worse,
                          double below_m) {
  if (distance_m(a.box, b.box) - required_m >= std::max(below_m, 0.0)) return std::nullopt;
  const NearestPair pair = separation(a.outline, b.outline);
  return Gap{&rule, pair.distance_m, required_m, a.item->id, b.item->id, pair, worse};
}

Check check_of(BetweenTwo between, std::string_view passes, std::string_view note) {
  Check check;
  check.passes = passes;
  check.breaks = "stands too near to";
  check.note = note;
  check.between = between;
  check.tightest = [between = std::move(between)](const Solid& solid, const Yard& yard, double below_m) {
    return tightest_of(solid, yard, below_m, between);
  };
  return check;
}

Check row_check(const Row& row, const RuleBook& rules) {
  const Rule* rule = &rules.at(row.rule);
  Check check = check_of(
      [row, rule](const Solid& one, const Solid& two, const Yard&, double below_m) {
        return either_way(one, two, row.subject, row.other, [&](const Solid& subject, const Solid& other) {
          return gap_of(subject, other, *rule, rule->value, row.worse, below_m);
        });
      },
      row.passes, row.note);
  check.starts_from = row.subject;
  return check;
}

const Tank& tank_of(const Solid& solid) { return *as<Tank>(*solid.item); }

bool is_lone(const Solid& tank, const Yard& yard) {
  const double apart_m = yard.rules.at("clear.lp-single-apart").value;
  return std::ranges::none_of(yard.solids, [&](const Solid& other) {
    return other.part == part::lp_tank && other.item->id != tank.item->id &&
           distance_m(tank.box, other.box) < apart_m &&
           separation(tank.outline, other.outline).distance_m < apart_m - hair_m;
  });
}

const Rule& lp_rule(const Solid& tank, const Yard& yard) {
  const double capacity_m3 = counted_capacity_m3(tank, yard);
  const Rule& row = lp_building_rule(capacity_m3, tank_of(tank).underground, yard.rules);
  const Rule& single = yard.rules.at("clear.lp-single");
  const bool small = capacity_m3 <= yard.rules.at("clear.lp-single-capacity").value + hair_m;
  const bool excepted = small && !tank_of(tank).underground && single.value < row.value && is_lone(tank, yard);
  return excepted ? single : row;
}

constexpr Parts lp_neighbours = any_building | part::bin;

/// The rule of a tank, or nothing where the check is not about it; worked out once where the tank is what is asked.
using RuleOfTank = const Rule* (*)(const Solid& tank, const Yard&);

Check tank_check(RuleOfTank rule_of, Verdict worse, std::string_view passes, std::string_view note) {
  const auto of_tank = [rule_of, worse](const Solid& tank, const Yard& yard, double below_m) -> std::optional<Gap> {
    const Rule* rule = rule_of(tank, yard);
    if (rule == nullptr) return std::nullopt;
    return tightest_of(tank, yard, below_m,
                       [&](const Solid&, const Solid& other, const Yard&, double below) -> std::optional<Gap> {
                         if ((other.part & lp_neighbours) == 0) return std::nullopt;
                         return gap_of(tank, other, *rule, rule->value, worse, below);
                       });
  };
  const auto of_neighbour = [rule_of, worse](const Solid& other, const Solid& tank, const Yard& yard,
                                             double below_m) -> std::optional<Gap> {
    if (tank.part != part::lp_tank || (other.part & lp_neighbours) == 0) return std::nullopt;
    const Rule* rule = rule_of(tank, yard);
    if (rule == nullptr) return std::nullopt;
    return gap_of(tank, other, *rule, rule->value, worse, below_m);
  };
  Check check = check_of(of_neighbour, passes, note);
  check.tightest = [of_tank, of_neighbour](const Solid& solid, const Yard& yard, double below_m) {
    return solid.part == part::lp_tank ? of_tank(solid, yard, below_m)
                                       : tightest_of(solid, yard, below_m, of_neighbour);
  };
  check.starts_from = part::lp_tank;
  return check;
}

Check lp_check() {
  return tank_check([](const Solid& tank, const Yard& yard) { return &lp_rule(tank, yard); }, Verdict::fail,
                    "LP tanks stand off from buildings and bins",
                    "measured for each container by its own water capacity");
}

Check lp_aggregate_check() {
  const RuleOfTank rule_of = [](const Solid& tank, const Yard& yard) -> const Rule* {
    const Rule& rule = lp_building_rule(aggregate_capacity_m3(tank, yard), tank_of(tank).underground, yard.rules);
    return rule.value > lp_rule(tank, yard).value ? &rule : nullptr;
  };
  Check check = tank_check(rule_of, Verdict::caution, "",
                           "with the tanks that stand together added up, as some insurers do: ask yours");
  check.says_pass = false;
  return check;
}

double between_tanks_m(const Tank& a, const Tank& b, const Rule& rule) {
  const double larger_m3 = std::max(a.water_capacity_m3, b.water_capacity_m3);
  return spaced_by_diameter(larger_m3) ? std::max(rule.value, (a.diameter_m + b.diameter_m) / 4) : rule.value;
}

Check between_tanks_check() {
  Check check = check_of(
      [](const Solid& one, const Solid& two, const Yard& yard, double below_m) -> std::optional<Gap> {
        if (one.part != part::lp_tank || two.part != part::lp_tank) return std::nullopt;
        const Tank &a = tank_of(one), &b = tank_of(two);
        if (a.underground || b.underground) return std::nullopt;
        const Rule& rule = lp_between_rule(std::max(a.water_capacity_m3, b.water_capacity_m3), yard.rules);
        return gap_of(one, two, rule, between_tanks_m(a, b, rule), Verdict::fail, below_m);
      },
      "LP tanks stand apart", "");
  check.starts_from = part::lp_tank;
  return check;
}

template <class Counts>
double capacity_together_m3(const Solid& tank, const Yard& yard, Counts counts) {
  const double together_m = yard.rules.at("clear.lp-single-apart").value;
  double sum_m3 = 0;
  for (const Solid& other : yard.solids) {
    if (other.part != part::lp_tank || !counts(tank_of(other))) continue;
    const bool itself = other.item->id == tank.item->id;
    if (distance_m(tank.box, other.box) >= together_m) continue;
    if (itself || separation(tank.outline, other.outline).distance_m < together_m)
      sum_m3 += tank_of(other).water_capacity_m3;
  }
  return sum_m3;
}

/// Things that are built into or over each other.
bool may_share_ground(Parts a, Parts b) {
  const auto both = [&](Parts one, Parts other) {
    return ((a & one) != 0 && (b & other) != 0) || ((b & one) != 0 && (a & other) != 0);
  };
  return both(part::overhead_bin, part::dryer | part::truck_scale | part::receiving | part::leg) ||
         both(part::leg, part::receiving | part::farm_building) ||
         both(part::control_room, part::farm_building | part::receiving) || both(part::truck_scale, part::receiving) ||
         ((a | b) & part::conveyor) != 0;
}

}  // namespace

Check overlap_check(const RuleBook& rules) {
  const Rule* rule = &rules.at("clear.overlap");
  Check check = check_of(
      [rule](const Solid& one, const Solid& two, const Yard&, double below_m) -> std::optional<Gap> {
        if (may_share_ground(one.part, two.part)) return std::nullopt;
        return gap_of(one, two, *rule, rule->value, Verdict::fail, below_m);
      },
      "Nothing stands on top of anything else", "");
  check.breaks = "overlaps";
  return check;
}

double counted_capacity_m3(const Solid& tank, const Yard& yard) {
  const auto is_small = [](const Tank& one) { return one.water_capacity_m3 < small_tank_m3 - hair_m; };
  return is_small(tank_of(tank)) ? capacity_together_m3(tank, yard, is_small) : tank_of(tank).water_capacity_m3;
}

double aggregate_capacity_m3(const Solid& tank, const Yard& yard) {
  return capacity_together_m3(tank, yard, [](const Tank&) { return true; });
}

std::vector<Check> spacing_checks(const RuleBook& rules) {
  std::vector<Check> checks{overlap_check(rules)};
  for (const Row& row : rows) checks.push_back(row_check(row, rules));
  checks.push_back(lp_check());
  checks.push_back(lp_aggregate_check());
  checks.push_back(between_tanks_check());
  return checks;
}

}  // namespace yardwright::clear
