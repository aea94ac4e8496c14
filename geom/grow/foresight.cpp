#include "geom/grow/foresight.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "geom/clear/mend.hpp"
#include "geom/grow/culprits.hpp"
#include "geom/grow/lanes.hpp"
#include "geom/grow/later_ground.hpp"
#include "geom/grow/outlets.hpp"
#include "geom/grow/prover.hpp"

namespace yardwright::grow {

namespace {

constexpr double widest_told_m = 40 * foot_m;
constexpr double told_off_m = 0.3, short_off_m = 0.04;  // how much too narrow a lane is told
constexpr double narrowest_m = 0.1;

std::string phase_name(const Site& site, int phase) {
  const auto at = static_cast<std::size_t>(phase);
  return at < site.phases.size() ? fmt::format("\"{}\"", site.phases[at]) : fmt::format("phase {}", phase);
}

std::string_view takes(const std::vector<ItemId>& items) { return items.size() > 1 ? " take " : " takes "; }

SitePath place_of_first(const Site& site, const std::vector<ItemId>& items) {
  if (items.empty()) return {};
  return {place_of(find(site, items.front())->thing)};
}

bool has_leg(const Site& site) {
  return std::ranges::any_of(site.items, [](const Item& item) { return as<Leg>(item) != nullptr; });
}

Finding nothing_to_lose(const Rule& rule, std::string title, const std::string& what, const Site& site) {
  return not_checked(
      Question::grow, rule, Bound::at_least, {}, std::move(title),
      fmt::format("there was {} before {} either, so it can take none", what, phase_name(site, latest_phase(site))));
}

void foresee_outlets(Findings& findings, const Outlook& outlook) {
  const Site& site = outlook.yard.site;
  if (!has_leg(site)) return;
  const Rule& rule = outlook.yard.catalogs.rules.at("grow.last-outlet");
  const int free = free_outlets(site, {});
  std::vector<ItemId> culprits;
  if (free < rule.value)
    culprits = culprits_among(outlet_takers(site, latest_phase(site)),
                              [&](const auto& gone) { return free_outlets(site, gone) >= rule.value; });
  if (free < rule.value && culprits.empty())
    return findings.push_back(nothing_to_lose(rule, "Outlets left for more bins", "no outlet left", site));
  Finding finding = judged(Question::grow, rule, Bound::at_least, free, culprits, Verdict::caution);
  finding.place = place_of_first(site, culprits);
  finding.title = "An outlet for more bins is left once " + phase_name(site, latest_phase(site)) + " is built";
  if (!culprits.empty()) {
    finding.title = titles_of(site, culprits) + std::string{takes(culprits)} + "the last outlet for more bins";
    if (auto mend = wider_distributor_for(site, culprits.back(), static_cast<int>(std::ceil(rule.value))))
      finding.mends.push_back(std::move(*mend));
  }
  findings.push_back(std::move(finding));
}

/// What of the phase could be in the way of something; a spout goes with what it fills.
std::vector<ItemId> standing(const Site& site, int phase) {
  std::vector<ItemId> all;
  for (const Item& item : site.items) {
    if (item.phase != phase || as<Picture>(item) || as<Dimension>(item) || as<Cover>(item)) continue;
    const Spout* spout = as<Spout>(item);
    const Item* filled = spout != nullptr ? find(site, spout->to) : nullptr;
    if (filled == nullptr || filled->phase != phase) all.push_back(item.id);
  }
  return all;
}

void foresee_spots(Findings& findings, const Outlook& outlook) {
  if (outlook.region == nullptr) return;
  const Site& site = outlook.yard.site;
  const Rule& rule = outlook.yard.catalogs.rules.at("grow.last-spot");
  const std::string next = "the next " + std::string{kind_label(outlook.sought)};
  const bool lost = outlook.region->bearable.empty();
  std::vector<ItemId> culprits;
  if (lost)
    culprits = culprits_among(standing(site, latest_phase(site)),
                              [&](const auto& gone) { return has_room_without(outlook, gone); });
  if (lost && culprits.empty())
    return findings.push_back(nothing_to_lose(rule, "A place for " + next, "no place", site));
  Finding finding = judged(Question::grow, rule, Bound::at_least, lost ? 0 : static_cast<double>(outlook.spots),
                           culprits, Verdict::caution);
  finding.place = place_of_first(site, culprits);
  finding.title = lost ? titles_of(site, culprits) + std::string{takes(culprits)} + "the last place for " + next
                       : "A place for " + next + " is left once " + phase_name(site, latest_phase(site)) + " is built";
  findings.push_back(std::move(finding));
}

/// What is planned and must be gone around, the last placed last. A dump is never held to be in its own way.
std::vector<ItemId> planned_blocks(const Site& site, const Lanes& lanes) {
  std::vector<LaneBlock> planned;
  std::ranges::copy_if(lanes.blocks(), std::back_inserter(planned), [&](const LaneBlock& block) {
    return block.phase > 0 && as<Receiving>(*find(site, block.item)) == nullptr;
  });
  std::ranges::stable_sort(planned, {}, &LaneBlock::phase);
  std::vector<ItemId> all;
  for (const LaneBlock& block : planned) all.push_back(block.item);
  return all;
}

std::string lost_words(const Site& site, const LaneGoal& lost) {
  const std::string title = title_of(*find(site, lost.item));
  return lost.end == 0 ? "shut " + title + " off from the dump"
                       : "take the last lane for trucks to one end of " + title;
}

std::string shutting_words(const Site& site, const std::vector<ItemId>& culprits, const LaneGoal& lost) {
  std::string does = lost_words(site, lost);
  if (culprits.size() == 1) does.insert(does.find(' '), "s");
  return titles_of(site, culprits) + " " + does;
}

void foresee_ways(Findings& findings, const Outlook& outlook) {
  const Site& site = outlook.yard.site;
  const Rule& rule = outlook.yard.catalogs.rules.at("grow.last-way");
  const auto say = [&](const std::string& why) {
    findings.push_back(
        not_checked(Question::grow, rule, Bound::at_least, {}, "Lanes for trucks to the dump and out again", why));
  };
  if (site.lot.corners.size() < 3) return say("the lot is not drawn: draw its corners");
  const Lanes lanes{site};
  if (!lanes.has_both()) return say("draw a gate and a dump, and the lanes between them are sought");
  const double width_m = std::max(rule.value, narrowest_m);
  const std::vector<ItemId> planned = planned_blocks(site, lanes);
  const LaneGoals now = lanes.reached(width_m);
  const LaneGoals had = planned.empty() || lanes.all_in(now) ? now : lanes.reached(width_m, planned);
  if (had.empty()) return say("without what is planned no lane of this width leads to it either, so it can take none");
  const LaneGoals lost = missing_of(now, had);
  std::vector<ItemId> culprits;
  if (!lost.empty())
    culprits = culprits_among(planned, [&](const auto& gone) { return holds_all(lanes.reached(width_m, gone), lost); });
  const double looked_at_m = std::max(widest_told_m, 2 * width_m);
  const double widest_m = lost.empty() ? lanes.widest_m(now, width_m, looked_at_m, told_off_m)
                                       : lanes.widest_m(had, 0, width_m, short_off_m);
  Finding finding = judged(Question::grow, rule, Bound::at_least, widest_m, culprits, Verdict::caution);
  finding.place = place_of_first(site, culprits);
  finding.title = lost.empty() ? "What is planned leaves trucks their lanes to the dump and out again"
                               : shutting_words(site, culprits, lost.front());
  if (widest_m == looked_at_m) finding.note = "wider lanes were not looked for";
  findings.push_back(std::move(finding));
}

Finding later_finding(const LaterGap& one, const Site& whole, const Rule& rule) {
  const Item &earlier = *find(whole, one.earlier), &later = *find(whole, one.later);
  Rule asked = rule;
  asked.value = one.gap.required_m;
  const bool kept = keeps(one.gap);
  const double measured_m = kept ? std::max(one.gap.measured_m, one.gap.required_m) : one.gap.measured_m;
  Finding finding = judged(Question::grow, asked, Bound::at_least, measured_m, {earlier.id}, Verdict::caution);
  finding.place = {one.gap.pair.a, one.gap.pair.b};
  if (kept) {
    finding.id = rule.id;
    finding.title = "Nothing stands on ground that is built on later";
    return finding;
  }
  finding.title = title_of(earlier) + (measured_m < 0 ? " stands on ground that " : " stands too near to where ") +
                  title_of(later) + (measured_m < 0 ? " needs later" : " is built later");
  finding.note = fmt::format("{} is of {}; {}", title_of(later), phase_name(whole, later.phase), one.gap.rule->label);
  if (!clear::may_move(earlier))
    finding.note += "; a house or well stays where it is: plan for another place";
  else if (earlier.phase == 0)
    finding.note += "; it stands today: move it, or plan for another place";
  return finding;
}

void foresee_later(Findings& findings, const Outlook& outlook) {
  const CheckedYard& yard = outlook.yard;
  const Rule& rule = yard.catalogs.rules.at("grow.later-ground");
  const Site whole = with_later(yard.site, outlook.later);
  for (const LaterGap& one :
       later_gaps(yard.site, outlook.later, yard.answers.surface, yard.catalogs.rules, rule.value))
    findings.push_back(later_finding(one, whole, rule));
}

}  // namespace

Findings foresee(const Outlook& outlook) {
  Findings findings;
  if (latest_phase(outlook.yard.site) > 0) {
    foresee_outlets(findings, outlook);
    foresee_spots(findings, outlook);
    foresee_ways(findings, outlook);
  }
  foresee_later(findings, outlook);
  return findings;
}

bool has_room_without(const Outlook& outlook, const std::vector<ItemId>& gone) {
  const CheckedYard& yard = outlook.yard;
  Site site = yard.site;
  for (const ItemId id : gone) site = yardwright::apply(std::move(site), RemoveItem{id});
  if (is_filled_by_spout(outlook.sought) && has_leg(site) && free_outlets(site) == 0) return false;
  const auto has_room = [&](const std::vector<Question>& anew) {
    const Answers answers = answers_after(site, yard, anew, MendSearch{false});
    const auto sought = newcomer(site, answers, yard.catalogs.rules, outlook.sought, latest_phase(yard.site));
    return sought && !allowed_region(*sought).bearable.empty();
  };
  std::vector<Question> reading = questions_reading(site, yard.site);
  std::erase_if(reading, [](Question one) { return one != Question::turn && one != Question::drain; });
  if (reading.empty()) return has_room({});
  const bool ways_change =
      std::ranges::any_of(gone, [&](ItemId id) { return as<Route>(*find(yard.site, id)) != nullptr; });
  return has_room(ways_change ? std::vector{Question::turn} : std::vector<Question>{}) && has_room(reading);
}

}  // namespace yardwright::grow
