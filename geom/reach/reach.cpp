#include "geom/reach/reach.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

#include "geom/reach/spout_findings.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::reach {

namespace {

void check_spout(const Site& site, const DesignSurface& surface, const RuleBook& rules, const Item& item,
                 Answer& answer) {
  const Spout& spout = *as<Spout>(item);
  const auto line = spout_line(site, spout, surface);
  if (!line) {
    answer.findings.push_back(
        not_checked(Question::reach, "reach.slope-dry", {item.id}, title_of(item),
                    "it does not join a leg to a bin, dryer or overhead bin; set where it comes from and goes to"));
    return;
  }
  const Item& leg = *find(site, spout.from);
  const Item& receiver = *find(site, spout.to);
  const SpoutCase one{site, surface, rules, item, leg, receiver, *line};
  answer.findings.push_back(slope_finding(one));
  answer.findings.push_back(span_finding(one));
  if (auto clear = clear_finding(one)) answer.findings.push_back(std::move(*clear));
  const Angle least = Angle::degrees(slope_rule(spout, rules).value);
  answer.spouts.push_back({item.id, leg.id, receiver.id, *line, least,
                           discharge_needed_m(*as<Leg>(leg), surface, line->to_level_m, line->run_m(), least)});
}

Finding outlets_finding(const Site& site, const RuleBook& rules, const Item& item, const Leg& leg) {
  int used = 0;
  for_each<Spout>(site, [&](const Item&, const Spout& spout) { used += spout.from == item.id ? 1 : 0; });
  Rule rule = rules.at("reach.outlets");
  const int needed = std::max(0, static_cast<int>(std::ceil(used - rule.value)));
  rule.value += leg.outlets;
  Finding finding = judged(Question::reach, rule, Bound::at_most, used, {item.id});
  finding.place = {leg.at};
  finding.title = finding.verdict == Verdict::pass ? "Outlets of " + title_of(item)
                                                   : title_of(item) + " has more spouts than outlets";
  if (finding.verdict != Verdict::pass) {
    Item wider = item;
    std::get<Leg>(wider.thing).outlets = needed;
    finding.mends.push_back({"give " + title_of(item) + " a distributor with more outlets",
                             Quantity::count,
                             static_cast<double>(needed - leg.outlets),
                             static_cast<double>(needed),
                             {PutItem{wider}}});
  }
  return finding;
}

const Item* nearest_leg(const Site& site, SitePoint place) {
  const Item* nearest = nullptr;
  for_each<Leg>(site, [&](const Item& item, const Leg& leg) {
    if (nearest == nullptr || distance(leg.at, place) < distance(place_of(nearest->thing), place)) nearest = &item;
  });
  return nearest;
}

/// A bin that no spout fills; the mend draws one from the nearest leg. Its slope is then judged like any other.
std::optional<Finding> unfilled_finding(const Site& site, const RuleBook& rules, const Item& item) {
  int spouts = 0;
  for_each<Spout>(site, [&](const Item&, const Spout& spout) { spouts += spout.to == item.id ? 1 : 0; });
  if (spouts > 0) return std::nullopt;
  const Item* leg = nearest_leg(site, place_of(item.thing));
  if (leg == nullptr) return std::nullopt;
  Finding finding = judged(Question::reach, rules.at("reach.filled"), Bound::at_least, spouts, {item.id});
  finding.title = "No spout fills " + title_of(item);
  finding.place = {place_of(item.thing)};
  Item spout{next_id(site), "", item.phase, std::nullopt, Spout{.from = leg->id, .to = item.id}};
  finding.mends.push_back({"draw a spout from " + title_of(*leg), Quantity::length, 0, 0, {PutItem{spout}}});
  return finding;
}

void add_rings(const Site& site, const DesignSurface& surface, const RuleBook& rules, Answer& answer) {
  const Angle least = Angle::degrees(rules.at("reach.slope-dry").value);
  for_each<Leg>(site, [&](const Item& item, const Leg& leg) {
    std::set<std::tuple<double, double, double>> sizes;
    for_each<Bin>(site, [&](const Item&, const Bin& bin) {
      if (!sizes.insert({bin.diameter_m, bin.eave_height_m, *inlet_height_m(bin)}).second) return;
      answer.rings.push_back(reach_ring(item.id, leg, bin, least, surface));
    });
  });
}

/// What this question cannot tell yet, said so that nothing passes by silence.
void add_unchecked(const Site& site, const DesignSurface& surface, Answer& answer) {
  bool legs = false, bins = false;
  for_each<Leg>(site, [&](const Item&, const Leg&) { legs = true; });
  for_each<Bin>(site, [&](const Item&, const Bin&) { bins = true; });
  if (!legs || !bins) {
    answer.findings.push_back(not_checked(Question::reach, "reach.filled", {}, "Filling the bins",
                                          !legs ? "there is no leg yet; place one" : "there is no bin yet; place one"));
    return;
  }
  if (!surface.known()) {
    answer.findings.push_back(not_checked(
        Question::reach, "reach.ground", {}, "Levels of the ground",
        "the site has no ground, so it is taken as flat; bring in its levels (yardwright ground, or the file menu)"));
  }
  answer.findings.push_back(
      not_checked(Question::reach, "reach.take-back", {}, "Emptying the bins back to a leg",
                  "conveyors are drawn but not yet followed from sump to boot; check them by hand"));
}

}  // namespace

Answer ask(const Site& site, const DesignSurface& surface, const Catalogs& catalogs) {
  Answer answer;
  const RuleBook& rules = catalogs.rules;
  for_each<Spout>(site, [&](const Item& item, const Spout&) { check_spout(site, surface, rules, item, answer); });
  for_each<Leg>(site, [&](const Item& item, const Leg& leg) {
    answer.findings.push_back(outlets_finding(site, rules, item, leg));
  });
  for_each<Bin>(site, [&](const Item& item, const Bin&) {
    if (auto unfilled = unfilled_finding(site, rules, item)) answer.findings.push_back(std::move(*unfilled));
  });
  add_rings(site, surface, rules, answer);
  add_unchecked(site, surface, answer);
  sort_by_need(answer.findings);
  return answer;
}

}  // namespace yardwright::reach
