#include "geom/drain/pit_checks.hpp"

#include <cmath>

#include "geom/site/footprint.hpp"

namespace yardwright::drain {

namespace {

constexpr double tallest_rim_m = 3;  // as the field of a pit allows

Item with_rim(Item item, double rim_height_m) {
  pit_body(item.thing)->rim_height_m = rim_height_m;
  return item;
}

/// A curb built to whole millimetres, so that the asked height is reached and not missed by rounding.
void offer_curb(Finding& finding, const Item& item, double least_rim_height_m) {
  const double rim_m = std::ceil(least_rim_height_m * 1000) / 1000;
  if (finding.verdict == Verdict::pass || rim_m > tallest_rim_m) return;
  const double now_m = pit_body(item.thing)->rim_height_m;
  finding.mends.push_back({"raise the curb of " + title_of(item),
                           Quantity::length,
                           rim_m - now_m,
                           rim_m,
                           {PutItem{with_rim(item, rim_m)}}});
}

Finding rim_over_pond(const Item& item, const PitWater& water, const RuleBook& rules, double yard_life_years) {
  const Rule& rule = rules.at("drain.rim-freeboard");
  const double freeboard_m = water.rim_level_m - water.pond->level_m;
  Finding finding = judged(Question::drain, rule, Bound::at_least, freeboard_m, {item.id});
  if (finding.verdict == Verdict::pass)
    finding.title = "The rim of " + title_of(item) + " stands clear of the water around it";
  else if (freeboard_m < 0)
    finding.title = "Water stands over the rim of " + title_of(item);
  else
    finding.title = "The rim of " + title_of(item) + " is too close to the water around it";
  finding.note =
      "the hollow around it takes the runoff of its ground and what spills over from the next; no pump, nothing soaks "
      "away";
  if (water.over_rim)
    finding.note +=
        "; by the rain table such standing water reaches the rim " + recurrence_words(*water.over_rim, yard_life_years);
  finding.place = {water.at};
  offer_curb(finding, item, water.pond->level_m + rule.value - water.ground_level_m);
  return finding;
}

Finding flow_past_rim(const Item& item, const PitWater& water, const RuleBook& rules) {
  const double curb_m = rules.at("drain.rim-freeboard").value;
  const bool flush = pit_body(item.thing)->rim_height_m < curb_m;
  const double running_m2 = flush ? water.catchment_m2 : 0;
  Finding finding =
      judged(Question::drain, rules.at("drain.flow-past-rim"), Bound::at_most, running_m2, {item.id}, Verdict::caution);
  if (!flush)
    finding.title = "The curb of " + title_of(item) + " turns the water that comes to it";
  else if (finding.verdict == Verdict::pass)
    finding.title = "Little ground drains to the rim of " + title_of(item);
  else
    finding.title = "A flow path crosses the low rim of " + title_of(item);
  finding.note = "the area drains to the rim, on ground that does not pond";
  finding.place = water.longest_way.size() > 1 ? water.longest_way : SitePath{water.at};
  offer_curb(finding, item, curb_m);
  return finding;
}

}  // namespace

Findings judge_pit(const Item& item, const PitWater& water, const RuleBook& rules, double yard_life_years) {
  if (water.pond) return {rim_over_pond(item, water, rules, yard_life_years)};
  return {flow_past_rim(item, water, rules)};
}

}  // namespace yardwright::drain
