#include "geom/pace/pace.hpp"

#include <algorithm>

#include "geom/pace/capacity_mends.hpp"
#include "geom/pace/stays_finding.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::pace {

namespace {

/// What Pace reads of either kind of bin.
struct Store {
  BinRoom room;
  std::string_view grain;
  bool wet_holding;
};

std::optional<Store> store_of(const Item& item) {
  if (const Bin* bin = as<Bin>(item)) return Store{room_of(*bin), bin->grain, bin->use == BinUse::wet_holding};
  if (const OverheadHolding* bin = as<OverheadHolding>(item)) {
    return Store{room_of(*bin), bin->grain, bin->use == HoldingUse::wet_holding};
  }
  return std::nullopt;
}

Finding unknown_grain(const Item& item, std::string_view grain) {
  Finding finding =
      not_checked(Question::pace, "pace.stays", {item.id}, "What " + title_of(item) + " holds",
                  "the grain catalogue has no \"" + std::string{grain} + "\": choose a grain that it has");
  finding.place = {place_of(item.thing)};
  return finding;
}

void add(std::vector<GrainCapacity>& capacity, const BinReport& report, double pack_ratio) {
  auto found = std::ranges::find(capacity, report.grain, &GrainCapacity::grain);
  if (found == capacity.end()) found = capacity.insert(found, {report.grain, {}, {}, {}});
  (report.wet_holding ? found->wet : found->dry) += report.volume.total * pack_ratio;
  found->stays += report.volume.stays * pack_ratio;
}

void report_bin(Answer& answer, const Item& item, const Store& store, const Catalogs& catalogs) {
  const Grain* grain = find(catalogs.grains, store.grain);
  if (grain == nullptr) {
    answer.findings.push_back(unknown_grain(item, store.grain));
    return;
  }
  const BinReport report{item.id, grain->id, store.wet_holding, heaped(store.room, *grain)};
  Finding finding = stays_finding(item, report, *grain, catalogs.rules);
  finding.place = {place_of(item.thing)};
  answer.findings.push_back(std::move(finding));
  add(answer.capacity, report, answer.pack_ratio);
  answer.bins.push_back(report);
}

Finding capacity_finding(const Answer& answer, const Site& site, const Catalogs& catalogs) {
  const Rule& rule = catalogs.rules.at("pace.capacity");
  if (rule.value <= 0) {
    return not_checked(Question::pace, rule.id, {}, "Dry storage against the harvest",
                       "how much must be stored is not set: give the rule its bushels");
  }
  GrainVolume dry;
  for (const GrainCapacity& one : answer.capacity) dry += one.dry;
  Finding finding = judged(Question::pace, rule, Bound::at_least, dry.as_cubic_metres(), {});
  finding.title = finding.verdict == Verdict::pass ? "The harvest fits into the dry stores"
                                                   : "The dry stores are too small for the harvest";
  if (finding.verdict == Verdict::pass) return finding;
  finding.mends = capacity_mends(site, catalogs, GrainVolume::cubic_metres(-finding.margin), answer.pack_ratio);
  finding.note =
      finding.mends.empty() ? "place another bin" : "place another bin, or make one larger that is not built yet";
  return finding;
}

template <class Kind>
bool has(const Site& site) {
  return std::ranges::any_of(site.items, [](const Item& item) { return as<Kind>(item) != nullptr; });
}

/// The harvest day is not on the plan yet; each part of it says what it needs.
void add_unasked(Answer& answer, const Site& site, const RuleBook& rules) {
  const auto say = [&](std::string_view rule, Bound bound, std::string title, std::string why) {
    answer.findings.push_back(not_checked(Question::pace, rules.at(rule), bound, {}, std::move(title), std::move(why)));
  };
  if (has<Dryer>(site)) {
    say("pace.wet-holding", Bound::at_least, "Wet holding over the harvest day",
        "needs the combine's rate, the hours a day and the moisture that comes in; the plan does not carry them");
  }
  if (has<Receiving>(site) || has<Leg>(site) || has<Dryer>(site)) {
    say("pace.bottleneck", Bound::at_least, "What the combine waits for",
        "needs the combine's rate, the trucks and their haul times; the plan does not carry them");
  }
  if (!answer.bins.empty()) {
    say("pace.days", Bound::at_most, "The day on which the last bin is full",
        "needs the combine's rate, the hours a day and the filling order; the plan does not carry them");
  }
}

}  // namespace

Answer ask(const Site& site, const DesignSurface&, const Catalogs& catalogs) {
  Answer answer;
  answer.pack_ratio = catalogs.rules.at("pace.pack").value;
  for (const Item& item : site.items) {
    if (const auto store = store_of(item)) report_bin(answer, item, *store, catalogs);
  }
  if (!answer.bins.empty()) answer.findings.push_back(capacity_finding(answer, site, catalogs));
  add_unasked(answer, site, catalogs.rules);
  if (answer.bins.empty()) {
    answer.findings.push_back(
        not_checked(Question::pace, "pace.capacity", {}, "What the yard holds", "there is no bin yet; place one"));
  }
  sort_by_need(answer.findings);
  return answer;
}

}  // namespace yardwright::pace
