#include "geom/drain/storm/storm_findings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "geom/drain/storm/storm_words.hpp"
#include "geom/site/footprint.hpp"
#include "geom/units/text.hpp"

namespace yardwright::drain::storm {

namespace {

constexpr double tallest_rim_m = 3;  // as the field of a pit allows
constexpr double largest_pump_m3_per_s = 1;
constexpr double pump_step_m3_per_s = 0.003785411784 / 60 * 5;  // 5 gpm: pumps are not bought finer
constexpr double pump_spare_ratio = 1.1;                        // the samples level out the peak within a minute

/// The pit that fills after this one, by the story.
const PitStory* next_to_fill(const StormStory& story, const PitStory& pit) {
  const PitStory* next = nullptr;
  for (const PitStory& other : story.pits) {
    if (!pit.overflows_s || !other.overflows_s || *other.overflows_s <= *pit.overflows_s) continue;
    if (next == nullptr || *other.overflows_s < *next->overflows_s) next = &other;
  }
  return next;
}

bool is_still_rising(const PitStory& pit) {
  const auto count = pit.samples.size();
  return count > 1 && pit.samples.back().level_m > pit.samples[count - 2].level_m + 0.001;
}

std::string how_water_comes(const PitStory& pit) {
  if (pit.rim_s) return "water comes over its rim from " + hour_words(*pit.rim_s) + " of the storm";
  if (pit.in_m3 <= 0) return "no water comes into it";
  return pit.has_tunnel ? "water comes through its tunnel or falls into it" : "rain falls into it";
}

/// The greatest rise of a minute, as it was, and as it would have been without the pump.
struct Rise {
  double fastest_m_per_s = 0;
  double unpumped_m_per_s = 0;
};

Rise rise_of(const PitStory& pit, double plan_m2) {
  Rise rise;
  for (std::size_t i = 1; i < pit.samples.size(); ++i) {
    const PitSample &before = pit.samples[i - 1], &now = pit.samples[i];
    rise.fastest_m_per_s =
        std::max(rise.fastest_m_per_s, (now.level_m - before.level_m) / std::max(now.time_s - before.time_s, 1e-9));
    rise.unpumped_m_per_s = std::max(rise.unpumped_m_per_s, now.inflow_m3_per_s / plan_m2);
  }
  return rise;
}

std::string how_fast(const Site& site, const Item& item, const PitStory& pit) {
  constexpr double told_from_m_per_h = 0.03, hour_s = 3600;
  const PitBody& body = *pit_body(item.thing);
  const Rise rise = rise_of(pit, body.width_m * body.length_m);
  const auto an_hour = [&](double m_per_s) { return text_of(m_per_s * hour_s, Quantity::length, site.units); };
  std::string words;
  if (rise.fastest_m_per_s * hour_s > told_from_m_per_h)
    words = "; it rises by up to " + an_hour(rise.fastest_m_per_s) + " an hour";
  if (!words.empty() && pit.pump_works && body.pump_m3_per_s > 0)
    words += ", " + an_hour(rise.unpumped_m_per_s) + " were its pump to fail";
  if (body.pump_m3_per_s > 0 && !pit.pump_works && pit.wet_s && pit.overflows_s)
    words += fmt::format("; it is full {:.2f} h after its pump should have started",
                         (*pit.overflows_s - *pit.wet_s) / hour_s);
  return words;
}

std::string what_happens(const Site& site, const Item& pit_item, const StormStory& story, const PitStory& pit) {
  std::string words = how_water_comes(pit) + how_fast(site, pit_item, pit);
  if (pit.overflows_s) words += "; it is full at " + hour_words(*pit.overflows_s);
  const PitStory* next = next_to_fill(story, pit);
  const Item* item = next == nullptr ? nullptr : find(site, next->item);
  if (item != nullptr) words += "; the next to fill is " + title_of(*item) + ", at " + hour_words(*next->overflows_s);
  if (!pit.overflows_s && is_still_rising(pit)) words += "; it is still rising at the end, " + hour_words(story.end_s);
  return words;
}

void offer_curb(Finding& finding, const Item& item, const PitStory& pit, const RuleBook& rules) {
  if (!pit.rim_s || pit.has_tunnel) return;  // a curb does not stop what comes through a tunnel
  const PitBody& now = *pit_body(item.thing);
  const double ground_m = pit.rim_m - now.rim_height_m;
  // Without the pit to drink it the hollow around it may fill to where it spills.
  const double beside_m = std::max(pit.highest_beside_m, pit.spill_m.value_or(pit.highest_beside_m));
  const double wanted_m = beside_m - ground_m + rules.at("drain.rim-freeboard").value;
  const double rim_m = std::ceil(wanted_m * 1000) / 1000;
  if (rim_m > tallest_rim_m) return;
  Item curbed = item;
  pit_body(curbed.thing)->rim_height_m = rim_m;
  finding.mends.push_back(
      {"raise the curb of " + title_of(item), Quantity::length, rim_m - now.rim_height_m, rim_m, {PutItem{curbed}}});
}

void offer_pump(Finding& finding, const Item& item, const PitStory& pit, double most_depth_m, UnitSystem units) {
  const PitBody& body = *pit_body(item.thing);
  if (body.pump_on_m >= most_depth_m || !pit.pump_works) return;
  const PitTank tank{item.id,
                     pit.floor_m,
                     pit.rim_m,
                     body.width_m * body.length_m,
                     {0, pit.floor_m + body.pump_on_m, pit.floor_m + body.pump_off_m, true, body.pump_shutoff_m,
                      pit.rim_m - body.rim_height_m + body.pump_discharge_m}};
  const auto holds = pump_that_holds_m3_per_s(tank, pit.samples, pit.floor_m + most_depth_m);
  if (!holds) return;
  const double rate = std::ceil(*holds * pump_spare_ratio / pump_step_m3_per_s) * pump_step_m3_per_s;
  if (rate <= body.pump_m3_per_s) return;
  Item pumped = item;
  pit_body(pumped.thing)->pump_m3_per_s = rate;
  if (body.pump_m3_per_s > 0)
    finding.mends.push_back(
        {"a larger pump in " + title_of(item), Quantity::flow, rate - body.pump_m3_per_s, rate, {PutItem{pumped}}});
  else
    finding.mends.push_back({"put a pump of " + text_of(rate, Quantity::flow, units) + " into " + title_of(item),
                             Quantity::flow,
                             0,
                             rate,
                             {PutItem{pumped}}});
}

Finding judge_pit(const Site& site, const Item& item, const StormStory& story, const PitStory& pit,
                  const RuleBook& rules) {
  const Rule& rule = rules.at("drain.storm-pit");
  Finding finding = judged(Question::drain, rule, Bound::at_most, pit.highest_m - pit.floor_m, {item.id});
  finding.place = {place_of(item.thing)};
  finding.note = what_happens(site, item, story, pit);
  constexpr double wet_floor_m = 0.01;
  if (finding.verdict == Verdict::pass)
    finding.title = finding.measured < wet_floor_m ? title_of(item) + " stays dry in the storm"
                                                   : "Water in " + title_of(item) + " stays low in the storm";
  else
    finding.title = pit.overflows_s ? title_of(item) + " fills to its rim in the storm"
                                    : "Water stands in " + title_of(item) + " in the storm";
  if (finding.verdict == Verdict::pass) return finding;
  offer_curb(finding, item, pit, rules);
  // A full pit turned water away: what came in is less than what came to it, and no pump can be found from it.
  if (!pit.overflows_s) offer_pump(finding, item, pit, rule.value, site.units);
  return finding;
}

Finding judge_wall(const Item& item, const WallStory& wall, const RuleBook& rules) {
  Finding finding = judged(Question::drain, rules.at("drain.storm-wall"), Bound::at_most, wall.deepest_m, {item.id},
                           Verdict::caution);
  finding.place = {place_of(item.thing)};
  finding.title = finding.verdict == Verdict::pass ? "Storm water stays low at the wall of " + title_of(item)
                                                   : "Storm water stands against the wall of " + title_of(item);
  finding.note = fmt::format("deeper than an inch for {:.1f} h", wall.wet_s / 3600);
  return finding;
}

Finding judge_tile(const Site& site, const Item& item, const PipeStory& tile, const RuleBook& rules) {
  Finding finding =
      judged(Question::drain, rules.at("drain.storm-tile"), Bound::at_most, tile.full_s, {item.id}, Verdict::caution);
  finding.place = *path_of(item.thing);
  finding.title = finding.verdict == Verdict::pass ? title_of(item) + " carries what comes to it in the storm"
                                                   : title_of(item) + " turns water away in the storm";
  finding.note = text_of(tile.highest_m3_per_s, Quantity::flow, site.units) + " at most came out of its end";
  if (finding.verdict != Verdict::pass)
    finding.note += "; what it turned away stands at its inlets and beside its roofs";
  return finding;
}

/// Of a storm that was stopped nobody knows the rest.
void take_passes_back(Findings& findings) {
  for (Finding& finding : findings) {
    if (finding.verdict != Verdict::pass) continue;
    finding.verdict = Verdict::not_checked;
    finding.title += ", so far";
    finding.note = "the storm was stopped on the way; let it run to its end";
  }
}

}  // namespace

std::optional<double> pump_that_holds_m3_per_s(const PitTank& tank, std::span<const PitSample> samples,
                                               double level_m) {
  const auto holds = [&](double rate_m3_per_s) {
    PitTank pumped = tank;
    pumped.pump.rate_m3_per_s = rate_m3_per_s;
    PitNetwork pit{{pumped}, {}};
    if (!samples.empty())
      pit.fill(0, std::clamp((samples[0].level_m - tank.floor_m) * tank.plan_m2, 0.0, tank.holds_m3()));
    for (std::size_t i = 1; i < samples.size(); ++i) {
      const double span_s = samples[i].time_s - samples[i - 1].time_s;
      const int parts = std::max(1, static_cast<int>(std::ceil(span_s / 5)));
      for (int part = 0; part < parts; ++part) {
        pit.step(span_s / parts, {samples[i].inflow_m3_per_s * span_s / parts});
        if (pit.level_m(0) > level_m) return false;
      }
    }
    return true;
  };
  double low = 0, high = largest_pump_m3_per_s;
  if (!holds(high)) return std::nullopt;
  for (int i = 0; i < 40; ++i) {
    const double middle = (low + high) / 2;
    (holds(middle) ? high : low) = middle;
  }
  return high;
}

Findings judge_storm(const Site& site, const StormStory& story, const RuleBook& rules) {
  Findings findings;
  for (const PitStory& pit : story.pits) {
    if (const Item* item = find(site, pit.item)) findings.push_back(judge_pit(site, *item, story, pit, rules));
  }
  for (const WallStory& wall : story.walls) {
    if (const Item* item = find(site, wall.item)) findings.push_back(judge_wall(*item, wall, rules));
  }
  for (const PipeStory& tile : story.tiles) {
    if (const Item* item = find(site, tile.item)) findings.push_back(judge_tile(site, *item, tile, rules));
  }
  if (story.stopped) take_passes_back(findings);
  for (const std::string& words : story.left_out)
    findings.push_back(not_checked(Question::drain, "drain.storm", {}, "Something is not in the storm", words));
  sort_by_need(findings);
  return findings;
}

}  // namespace yardwright::drain::storm
