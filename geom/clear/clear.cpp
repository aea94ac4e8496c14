#include "geom/clear/clear.hpp"

#include <algorithm>
#include <limits>
#include <set>

#include "geom/clear/fire_road.hpp"
#include "geom/clear/line_distance.hpp"
#include "geom/clear/line_setback.hpp"
#include "geom/clear/lot_setback.hpp"
#include "geom/clear/mend.hpp"
#include "geom/clear/spacing.hpp"
#include "geom/clear/working_room.hpp"

namespace yardwright::clear {

namespace {

std::string title_of_id(const Site& site, ItemId id) {
  const Item* item = find(site, id);
  return item != nullptr ? title_of(*item) : "";
}

/// What a person can do where no change of the plan mends it.
std::string without_mend(const Gap& gap, const Yard& yard) {
  const auto stays = [&](ItemId id) { return id && find(yard.site, id) != nullptr && !may_move(*find(yard.site, id)); };
  if (stays(gap.of) || stays(gap.to)) return "a house or well stays where it is: ask whose rule it is for an exception";
  return "no move of either passes: make one smaller, take one away, or gain land";
}

Finding finding_of(const Gap& gap, const Check& check, const Yard& yard) {
  Rule rule = *gap.rule;
  rule.value = gap.required_m;
  std::vector<ItemId> items{gap.of};
  if (gap.to) items.push_back(gap.to);
  std::ranges::sort(items);
  const double measured_m = keeps(gap) ? std::max(gap.measured_m, gap.required_m) : gap.measured_m;
  Finding finding = judged(Question::clear, rule, Bound::at_least, measured_m, items, gap.worse);
  finding.place = {gap.pair.a, gap.pair.b};
  if (keeps(gap)) {
    finding.id = rule.id;
    finding.title = check.passes;
    return finding;
  }
  finding.title = title_of_id(yard.site, gap.of) + " " + check.breaks;
  if (gap.to) finding.title += " " + title_of_id(yard.site, gap.to);
  finding.note = check.note;
  finding.mends = mends_for(gap, check, yard);
  if (finding.mends.empty()) finding.note += (finding.note.empty() ? "" : "; ") + without_mend(gap, yard);
  return finding;
}

void add(Answer& answer, const Gap& gap, Finding finding) {
  if (!gap.in_the_open)
    answer.near.push_back({gap.rule->id, finding.verdict, gap.of, gap.to, gap.pair, gap.required_m});
  answer.findings.push_back(std::move(finding));
}

/// Every solid's tightest break, and the tightest of all that is kept.
void judge(Answer& answer, const Check& check, const Yard& yard) {
  std::set<std::string> said;
  std::optional<Gap> tightest;
  double below_m = std::numeric_limits<double>::infinity();
  for (const Solid& solid : yard.solids) {
    if ((solid.part & check.starts_from) == 0) continue;
    const auto gap = check.tightest(solid, yard, below_m);
    if (!gap) continue;
    if (keeps(*gap)) {
      tightest = gap;
      below_m = std::max(0.0, gap->margin_m());
      continue;
    }
    std::vector<ItemId> items{gap->of, gap->to};
    std::ranges::sort(items);
    if (said.insert(finding_id(gap->rule->id, items)).second) add(answer, *gap, finding_of(*gap, check, yard));
  }
  if (tightest && check.says_pass) add(answer, *tightest, finding_of(*tightest, check, yard));
}

std::vector<Check> checks_for(const Yard& yard) {
  std::vector<Check> checks = spacing_checks(yard.rules);
  for (auto more : {lot_checks(), line_checks(yard), room_checks(yard.rules)}) {
    std::ranges::move(more, std::back_inserter(checks));
  }
  return checks;
}

void add_lines(Answer& answer, const Yard& yard) {
  for_each<OverheadLine>(yard.site, [&](const Item& item, const OverheadLine& line) {
    const double half_m = equipment_distance_m(line.voltage_v, yard.rules);
    answer.strips.push_back({item.id, half_m, strip(line.path, 2 * half_m)});
    for_each<Bin>(yard.site, [&](const Item& bin_item, const Bin& one) {
      if (line.path.size() < 2) return;
      const SitePoint under = nearest_on_path(line.path, one.at).point;
      const double conductor_m = line.lowest_conductor_m + yard.surface.level_m(under) - yard.surface.level_m(one.at);
      answer.rings.push_back(
          {bin_item.id, item.id, portable_distance_m(*port_height_m(one, yard.rules), conductor_m, yard.rules)});
    });
  });
}

Finding ammonia_by_people(const Item& tank, const RuleBook& rules) {
  return not_checked(Question::clear, rules.at("clear.ammonia-assembly"), Bound::at_least, {tank.id},
                     title_of(tank) + " and places where people gather",
                     "schools, churches and the like are not on the plan: measure to the nearest, and ask the state");
}

Finding high_voltage(const Item& item, const OverheadLine& line, const RuleBook& rules) {
  Finding finding = not_checked(Question::clear, rules.at("clear.line-voltage"), Bound::at_most, {item.id},
                                title_of(item) + " has a higher voltage than the published clearances are for",
                                "more is needed than what was judged: ask the utility");
  finding.measured = line.voltage_v;
  return finding;
}

void add_unanswered(Answer& answer, const Yard& yard) {
  const auto say = [&](std::string rule, std::vector<ItemId> items, std::string title, std::string why) {
    answer.findings.push_back(
        not_checked(Question::clear, std::move(rule), std::move(items), std::move(title), std::move(why)));
  };
  if (yard.lot.outer.size() < 3 && !yard.solids.empty()) {
    say("clear.lot-neighbour", {}, "Setbacks from the lot's edges",
        "the lot is not drawn: draw its corners and name its edges");
  }
  for (const Solid& solid : yard.solids) {
    if (solid.part == part::ammonia_tank) answer.findings.push_back(ammonia_by_people(*solid.item, yard.rules));
  }
  for_each<OverheadLine>(yard.site, [&](const Item& item, const OverheadLine& line) {
    if (line.voltage_v > yard.rules.at("clear.line-voltage").value)
      answer.findings.push_back(high_voltage(item, line, yard.rules));
  });
}

}  // namespace

Answer ask(const Site& site, const DesignSurface& surface, const Catalogs& catalogs) {
  Answer answer;
  const Yard yard = yard_of(site, surface, catalogs.rules);
  for (const Check& check : checks_for(yard)) judge(answer, check, yard);
  if (auto road = fire_road_finding(site, catalogs.rules)) answer.findings.push_back(std::move(*road));
  add_lines(answer, yard);
  add_unanswered(answer, yard);
  if (answer.findings.empty()) {
    answer.findings.push_back(not_checked(Question::clear, "clear.overlap", {}, "Distances between things",
                                          "there is nothing to keep a distance from yet; place something"));
  }
  sort_by_need(answer.findings);
  return answer;
}

}  // namespace yardwright::clear
