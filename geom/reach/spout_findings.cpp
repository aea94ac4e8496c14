#include "geom/reach/spout_findings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

#include "geom/reach/solid.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::reach {

namespace {

constexpr double hair_m = 1e-6;          // keeps a mend on the passing side of rounding
constexpr double tallest_leg_m = 100.0;  // the greatest discharge height that a leg's field allows
constexpr double lowest_eave_m = 2.0;    // a bin lower than this is no mend
constexpr double farthest_aside_m = 60.0;
constexpr double worth_naming_m = 15.0;  // a solid farther than this from a spout is not mentioned

std::string spout_words(const SpoutCase& spout) { return "Spout to " + title_of(spout.receiver); }

Item with_discharge(const SpoutCase& spout, double discharge_m) {
  Item taller = spout.leg;
  std::get<Leg>(taller.thing).discharge_height_m = discharge_m;
  return taller;
}

Mend raise_leg(const SpoutCase& spout, double to_m) {
  const double now_m = as<Leg>(spout.leg)->discharge_height_m;
  return {"raise " + title_of(spout.leg), Quantity::length, to_m - now_m, to_m, {PutItem{with_discharge(spout, to_m)}}};
}

std::optional<Mend> lower_eave(const SpoutCase& spout, Angle least) {
  const Bin* bin = as<Bin>(spout.receiver);
  if (bin == nullptr) return std::nullopt;
  const double highest_inlet_m = spout.line.from_level_m - spout.line.run_m() * tan(least);
  const double eave_m = bin->eave_height_m - (spout.line.to_level_m - highest_inlet_m) - hair_m;
  if (eave_m < lowest_eave_m) return std::nullopt;
  Item lower = spout.receiver;
  std::get<Bin>(lower.thing).eave_height_m = eave_m;
  return Mend{"lower the eave of " + title_of(spout.receiver),
              Quantity::length,
              eave_m - bin->eave_height_m,
              eave_m,
              {PutItem{lower}}};
}

/// Toward the leg along the spout, as far as the ground on the way demands, never onto the leg.
std::optional<Mend> move_nearer(const SpoutCase& spout, Angle least) {
  const Thing& thing = spout.receiver.thing;
  const SiteVector toward = unit(spout.line.from - spout.line.to);
  const auto passes = [&](double by_m) {
    const Thing there = moved(thing, toward * by_m);
    const double run_m = spout.line.run_m() - by_m;
    return spout.line.from_level_m - *inlet_level_m(there, spout.surface) >= run_m * tan(least);
  };
  const Outline outline = *footprint(thing);
  const double room_m = nearest_pair(outline, *footprint(spout.leg.thing)).distance_m;
  if (room_m <= 0 || !passes(room_m)) return std::nullopt;
  double short_m = 0, enough_m = room_m;
  while (enough_m - short_m > hair_m) {
    const double middle_m = (short_m + enough_m) / 2;
    (passes(middle_m) ? enough_m : short_m) = middle_m;
  }
  Item nearer = spout.receiver;
  nearer.thing = moved(thing, toward * enough_m);
  return Mend{fmt::format("move {} toward {}", title_of(spout.receiver), title_of(spout.leg)),
              Quantity::length,
              enough_m,
              spout.line.run_m() - enough_m,
              {PutItem{nearer}}};
}

/// The tightest solid, the leg and the receiver left out; an item put `instead` of its own place, if any.
struct Tightest {
  const Item* item = nullptr;
  ClearDistance clear{std::numeric_limits<double>::infinity(), {}};
};

Tightest tightest(const SpoutCase& spout, const SpoutLine& line, const Item* instead = nullptr) {
  Tightest found;
  const Box near = grown(box_of({line.from, line.to}), worth_naming_m);
  for (const Item& item : spout.site.items) {
    if (item.id == spout.leg.id || item.id == spout.receiver.id) continue;
    const auto solid = solid_of(instead != nullptr && instead->id == item.id ? *instead : item, spout.surface);
    if (!solid) continue;
    const Box box = box_of(solid->outline);
    if (box.high.x < near.low.x || box.low.x > near.high.x || box.high.y < near.low.y || box.low.y > near.high.y)
      continue;
    const ClearDistance clear = clear_distance(line, *solid);
    if (clear.distance_m < found.clear.distance_m) found = {&item, clear};
  }
  return found;
}

/// The least discharge height at which the spout clears everything by `required_m`, where there is one.
std::optional<Mend> raise_over(const SpoutCase& spout, double required_m) {
  const double now_m = as<Leg>(spout.leg)->discharge_height_m;
  const auto passes = [&](double discharge_m) {
    SpoutLine line = spout.line;
    line.from_level_m += discharge_m - now_m;
    return tightest(spout, line).clear.distance_m >= required_m;
  };
  if (!passes(tallest_leg_m)) return std::nullopt;
  double low_m = now_m, high_m = tallest_leg_m;
  while (high_m - low_m > 1e-4) {
    const double middle_m = (low_m + high_m) / 2;
    (passes(middle_m) ? high_m : low_m) = middle_m;
  }
  return raise_leg(spout, high_m);
}

/// The least move of what is in the way to either side of the spout, where it is no dwelling.
std::optional<Mend> move_aside(const SpoutCase& spout, const Item& item, double required_m) {
  const Building* building = as<Building>(item);
  if (building != nullptr && building->use == BuildingUse::dwelling) return std::nullopt;
  std::optional<Mend> best;
  const SiteVector left = left_of(unit(spout.line.to - spout.line.from));
  for (const SiteVector way : {left, -left}) {
    Item there = item;
    const auto passes = [&](double by_m) {
      there.thing = moved(item.thing, way * by_m);
      return tightest(spout, spout.line, &there).clear.distance_m >= required_m;
    };
    double low_m = 0, high_m = farthest_aside_m;
    if (!passes(high_m)) continue;
    while (high_m - low_m > 1e-4) {
      const double middle_m = (low_m + high_m) / 2;
      (passes(middle_m) ? high_m : low_m) = middle_m;
    }
    if (best && best->change <= high_m) continue;
    there.thing = moved(item.thing, way * high_m);
    best = Mend{"move " + title_of(item), Quantity::length, high_m, high_m, {PutItem{there}}};
  }
  return best;
}

}  // namespace

const Rule& slope_rule(const Spout& spout, const RuleBook& rules) {
  return rules.at(spout.state == GrainState::wet ? "reach.slope-wet" : "reach.slope-dry");
}

Finding slope_finding(const SpoutCase& spout) {
  const Rule& rule = slope_rule(*as<Spout>(spout.spout), spout.rules);
  Finding finding = judged(Question::reach, rule, Bound::at_least, spout.line.slope().as_degrees(), {spout.spout.id});
  finding.items = {spout.spout.id, spout.receiver.id, spout.leg.id};
  finding.place = {spout.line.from, spout.line.to};
  finding.title = spout_words(spout);
  if (finding.verdict == Verdict::pass) return finding;
  finding.title += " is too flat";
  const Angle least = Angle::degrees(rule.value);
  const double needed_m =
      discharge_needed_m(*as<Leg>(spout.leg), spout.surface, spout.line.to_level_m, spout.line.run_m(), least) + hair_m;
  if (needed_m <= tallest_leg_m) finding.mends.push_back(raise_leg(spout, needed_m));
  if (const auto mend = move_nearer(spout, least)) finding.mends.push_back(*mend);
  if (const auto mend = lower_eave(spout, least)) finding.mends.push_back(*mend);
  return finding;
}

Finding span_finding(const SpoutCase& spout) {
  const Rule& rule = spout.rules.at("reach.free-span");
  const bool supported = as<Spout>(spout.spout)->supported;
  const double free_m = supported ? 0 : spout.line.length_m();
  Finding finding = judged(Question::reach, rule, Bound::at_most, free_m, {spout.spout.id}, Verdict::caution);
  finding.items = {spout.spout.id, spout.receiver.id, spout.leg.id};
  finding.place = {spout.line.from, spout.line.to};
  finding.title = spout_words(spout) + (finding.verdict == Verdict::pass ? ": free span" : " wants a support");
  if (supported) finding.note = "carried by its truss or tower";
  if (finding.verdict == Verdict::pass) return finding;
  finding.note = "ask the spout's maker";
  Item carried = spout.spout;
  std::get<Spout>(carried.thing).supported = true;
  finding.mends.push_back({"give it a truss or a tower", Quantity::length, 0, 0, {PutItem{carried}}});
  return finding;
}

std::optional<Finding> clear_finding(const SpoutCase& spout) {
  const Rule& rule = spout.rules.at("reach.clear-of-roofs");
  const Tightest found = tightest(spout, spout.line);
  if (found.item == nullptr || found.clear.distance_m > worth_naming_m) return std::nullopt;
  Finding finding = judged(Question::reach, rule, Bound::at_least, found.clear.distance_m, {spout.spout.id});
  finding.items = {spout.spout.id, found.item->id};
  finding.place = {found.clear.place};
  const bool passes = finding.verdict == Verdict::pass;
  finding.title =
      fmt::format("{} {} {}", spout_words(spout), passes ? "clears" : "comes too near to", title_of(*found.item));
  if (!passes) {
    auto mend = raise_over(spout, rule.value);
    if (!mend) mend = move_aside(spout, *found.item, rule.value);
    if (mend)
      finding.mends.push_back(std::move(*mend));
    else
      finding.note = "neither a taller leg nor moving that aside clears it: place the bin or the leg elsewhere";
  }
  return finding;
}

}  // namespace yardwright::reach
