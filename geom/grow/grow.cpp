#include "geom/grow/grow.hpp"

#include <algorithm>
#include <map>

#include "geom/grow/foresight.hpp"
#include "geom/grow/move_culprit.hpp"
#include "geom/grow/outlets.hpp"
#include "geom/grow/spout_reach.hpp"

namespace yardwright::grow {

namespace {

constexpr std::size_t most_spots = 4;
constexpr double tallest_leg_m = 100.0;  // the greatest discharge height that a leg's field allows

const Item* last_bin(const Site& site) {
  const Item* last = nullptr;
  for_each<Bin>(site, [&](const Item& item, const Bin&) { last = &item; });
  return last;
}

std::string title_for(const Site& site, const Thing& thing) {
  const Item* like = last_bin(site);
  if (like != nullptr && moved(thing, place_of(like->thing) - place_of(thing)) == like->thing)
    return "Room for another bin like " + title_of(*like);
  return "Room for a " + std::string{kind_label(thing)} + " of this size";
}

/// The reasons by the words of their rule; the bearable ground if all of one were set aside.
bool would_fit_without(const Newcomer& newcomer, const AllowedRegion& region, std::string_view why) {
  Region others;
  for (const KeepOff& one : region.reasons) {
    if (one.why != why && one.worse == Verdict::fail) others.insert(others.end(), one.area.begin(), one.area.end());
  }
  return !without({Polygon{newcomer.site.lot.corners, {}}}, united(others)).empty();
}

/// What alone is in the way, where there is such a thing: "it lies too far from every leg with an outlet left".
std::string in_the_way_words(const Newcomer& newcomer, const AllowedRegion& region) {
  std::map<std::string, bool> seen;
  for (const KeepOff& one : region.reasons) {
    if (one.worse != Verdict::fail || !seen.insert({one.why, true}).second) continue;
    if (would_fit_without(newcomer, region, one.why)) return "wherever it could stand otherwise, it " + one.why;
  }
  return "no one thing is in its way: point at a place to see what is";
}

bool fits_under(const Newcomer& newcomer, const Item& leg, double discharge_m) {
  Site site = newcomer.site;
  for (Item& item : site.items) {
    if (item.id == leg.id) std::get<Leg>(item.thing).discharge_height_m = discharge_m;
  }
  const Newcomer there{site, newcomer.answers, newcomer.rules, newcomer.item, newcomer.shape, newcomer.behind};
  return !allowed_region(there).bearable.empty();
}

/// The least discharge height at which there is a place, for the leg that needs the least more.
std::optional<Mend> raise_leg(const Newcomer& newcomer) {
  std::optional<Mend> best;
  for (const Item& item : newcomer.site.items) {
    const Leg* leg = as<Leg>(item);
    if (leg == nullptr || !fits_under(newcomer, item, tallest_leg_m)) continue;
    double low_m = leg->discharge_height_m, high_m = tallest_leg_m;
    while (high_m - low_m > 0.01) {
      const double middle_m = (low_m + high_m) / 2;
      (fits_under(newcomer, item, middle_m) ? high_m : low_m) = middle_m;
    }
    const double more_m = high_m - leg->discharge_height_m;
    if (best && best->change <= more_m) continue;
    Item taller = item;
    std::get<Leg>(taller.thing).discharge_height_m = high_m;
    best = Mend{"raise " + title_of(item), Quantity::length, more_m, high_m, {PutItem{taller}}};
  }
  return best;
}

Finding room_finding(const Newcomer& newcomer, const Answer& answer, const Catalogs& catalogs, MendSearch& search) {
  const auto free = std::ranges::count(answer.spots, true, &Spot::free);
  Finding finding = judged(Question::grow, catalogs.rules.at("grow.room"), Bound::at_least, static_cast<double>(free),
                           {}, Verdict::caution);
  finding.title = title_for(newcomer.site, answer.thing);
  if (!answer.spots.empty()) finding.place = {answer.spots.front().at};
  if (finding.verdict == Verdict::pass) return finding;
  if (!answer.spots.empty()) {
    finding.note = "only where advice speaks against it: point at a place to see which";
    return finding;
  }
  finding.note = in_the_way_words(newcomer, answer.region);
  if (!search.may_seek()) return finding;
  if (auto mend = raise_leg(newcomer)) finding.mends.push_back(std::move(*mend));
  return finding;
}

/// A leg's next bin needs an outlet.
Finding outlet_finding(const Site& site, const Item& item, const Leg& leg, const RuleBook& rules) {
  const int used = used_outlets(site, item.id);
  Finding finding = judged(Question::grow, rules.at("grow.outlets-left"), Bound::at_least, leg.outlets - used,
                           {item.id}, Verdict::caution);
  finding.place = {leg.at};
  finding.title = "Outlets left for more bins on " + title_of(item);
  if (finding.verdict == Verdict::pass) return finding;
  finding.mends.push_back(wider_distributor(item, used + static_cast<int>(std::ceil(finding.required))));
  return finding;
}

/// Why no room can be sought for the thing; nothing where it can.
std::string why_not(const Site& site, const Thing& sought) {
  if (site.lot.corners.size() < 3) return "the lot is not drawn: draw its corners, and what can stand in it is sought";
  if (!footprint(sought) || path_of(sought) != nullptr)
    return "a " + std::string{kind_label(sought)} + " covers no ground: draw it";
  return "";
}

void seek_room(Answer& answer, const Newcomer& newcomer, const Catalogs& catalogs, MendSearch& search) {
  answer.region = allowed_region(newcomer);
  answer.spots = best_spots(newcomer, answer.region, most_spots);
  answer.free_m2 = area_m2(answer.region.free);
  answer.findings.push_back(room_finding(newcomer, answer, catalogs, search));
}

}  // namespace

Thing next_bin(const Site& site) {
  const Item* last = last_bin(site);
  return last != nullptr ? last->thing : Thing{Bin{}};
}

Answer ask(const Site& site, const Answers& answers, const Catalogs& catalogs, const Thing* thing, MendSearch search,
           const std::vector<Item>& later) {
  Answer answer;
  answer.thing = thing != nullptr ? *thing : next_bin(site);
  const std::string why = why_not(site, answer.thing);
  if (why.empty()) {
    const int phase = static_cast<int>(site.phases.size()) - 1;
    seek_room(answer, *newcomer(site, answers, catalogs.rules, answer.thing, phase), catalogs, search);
  } else {
    answer.findings.push_back(not_checked(Question::grow, "grow.room", {}, "Where the next bin can go", why));
  }
  for_each<Leg>(site, [&](const Item& item, const Leg& leg) {
    answer.findings.push_back(outlet_finding(site, item, leg, catalogs.rules));
  });
  const Outlook outlook{
      {site, answers, catalogs}, answer.thing, why.empty() ? &answer.region : nullptr, answer.spots.size(), later};
  std::ranges::move(foresee(outlook), std::back_inserter(answer.findings));
  add_moves(answer.findings, outlook, search);
  answer.mends_sought = !search.left_some();
  sort_by_need(answer.findings);
  return answer;
}

std::vector<Item> built_after(const Site& whole, int phase) {
  std::vector<Item> later;
  std::ranges::copy_if(whole.items, std::back_inserter(later), [&](const Item& item) { return item.phase > phase; });
  return later;
}

Answers with_growth(Answers answers, const Site& site, const Catalogs& catalogs, const std::vector<Item>& later) {
  Catalogs in_force = catalogs;
  in_force.rules = catalogs.rules.with(site.rule_overrides);
  answers.grow = std::make_shared<const Findings>(ask(site, answers, in_force, nullptr, MendSearch{}, later).findings);
  return answers;
}

std::string reason_words(const KeepOff& reason, const Site& site) {
  const Item* item = find(site, reason.item);
  return item != nullptr ? reason.why + " " + title_of(*item) : reason.why;
}

}  // namespace yardwright::grow
