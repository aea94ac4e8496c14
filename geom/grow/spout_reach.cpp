#include "geom/grow/spout_reach.hpp"

#include <algorithm>

#include "geom/grow/region_where.hpp"
#include "geom/reach/solid.hpp"
#include "geom/reach/spout_findings.hpp"

namespace yardwright::grow {

namespace {

constexpr double samples_apart_m = 1.0;

int spouts_from(const Site& site, ItemId leg) {
  int count = 0;
  for_each<Spout>(site, [&](const Item&, const Spout& spout) { count += spout.from == leg ? 1 : 0; });
  return count;
}

bool has_outlet_left(const Newcomer& newcomer, const Item& leg) {
  return spouts_from(newcomer.site, leg.id) + 1 <= as<Leg>(leg)->outlets + newcomer.rules.at("reach.outlets").value;
}

bool is_steep_enough(const Newcomer& newcomer, const Leg& leg, SitePoint place) {
  return spout_to(newcomer, leg, place).slope().as_degrees() >= slope_rule(newcomer).value;
}

/// No place farther than this from the leg is reached: there the lowest ground of all lies too near under the outlet.
double farthest_m(const Newcomer& newcomer, const Leg& leg) {
  const DesignSurface& surface = newcomer.answers.surface;
  const double low_m = surface.known() ? std::ranges::min(surface.design.values()) : 0.0;
  const double drop_m = reach::outlet_level_m(leg, surface) - low_m - *reach::inlet_height_m(newcomer.item.thing);
  return drop_m > 0 ? drop_m / tan(Angle::degrees(slope_rule(newcomer).value)) : 0;
}

/// Of the lot as far as the leg could reach; of no area where that is nothing.
Box looked_at(const Newcomer& newcomer, const Leg& leg) {
  const Box lot = box_of(newcomer.site.lot.corners);
  const Box near = grown(Box{leg.at, leg.at}, farthest_m(newcomer, leg) + samples_apart_m);
  return {{std::max(lot.low.x, near.low.x), std::max(lot.low.y, near.low.y)},
          {std::min(lot.high.x, near.high.x), std::min(lot.high.y, near.high.y)}};
}

/// Whether a spout from the leg to the place passes over or beside the box.
bool passes_by(SitePoint from, SitePoint to, const Box& box) {
  const SitePoint middle = between(box.low, box.high, 0.5);
  return nearest_on_segment(from, to, middle).distance_m <= distance(box.low, box.high) / 2;
}

Shadow shadow_of(const Newcomer& newcomer, const Leg& leg, const reach::Solid& solid, const GridFrame& samples) {
  const double clear_m = newcomer.rules.at("reach.clear-of-roofs").value;
  const Box box = grown(box_of(solid.outline), clear_m);
  return {solid.item, region_where(samples, [&](SitePoint place) {
            if (!passes_by(leg.at, place, box)) return false;
            const reach::SpoutLine line = spout_to(newcomer, leg, place);
            return line.slope().as_degrees() >= slope_rule(newcomer).value && comes_within(line, solid, clear_m);
          })};
}

LegReach reach_of(const Newcomer& newcomer, const Item& item) {
  const Leg& leg = *as<Leg>(item);
  LegReach found{item.id, {}, {}};
  const Box box = looked_at(newcomer, leg);
  if (box.high.x <= box.low.x || box.high.y <= box.low.y) return found;
  const GridFrame samples = samples_over(box, samples_apart_m);
  found.reached = region_where(samples, [&](SitePoint place) { return is_steep_enough(newcomer, leg, place); });
  if (found.reached.empty()) return found;
  for (const Item& other : newcomer.site.items) {
    if (other.id == item.id) continue;
    const auto solid = reach::solid_of(other, newcomer.answers.surface);
    if (!solid || gap_m(box_of(solid->outline), box) > 0) continue;
    Shadow shadow = shadow_of(newcomer, leg, *solid, samples);
    if (!shadow.area.empty()) found.shadows.push_back(std::move(shadow));
  }
  return found;
}

Region all_of(const std::vector<Shadow>& shadows) {
  Region pieces;
  for (const Shadow& shadow : shadows) pieces.insert(pieces.end(), shadow.area.begin(), shadow.area.end());
  return united(pieces);
}

/// Why a place that some leg reaches by slope is not filled: one area for each thing whose shadow it lies in.
KeepOffs off_shadows(const Newcomer& newcomer, const std::vector<LegReach>& reaches, const Region& reached) {
  Region clear;
  for (const LegReach& one : reaches) std::ranges::move(one.clear(), std::back_inserter(clear));
  const Region blocked = without(reached, united(clear));
  KeepOffs all;
  const Rule& rule = newcomer.rules.at("reach.clear-of-roofs");
  for (const LegReach& one : reaches) {
    for (const Shadow& shadow : one.shadows) {
      Region area = common(shadow.area, blocked);
      if (!area.empty())
        all.push_back({rule.id, shadow.item, "would be filled by a spout too near to", rule.value, Verdict::fail,
                       std::move(area)});
    }
  }
  return all;
}

bool any_leg(const Site& site) {
  return std::ranges::any_of(site.items, [](const Item& item) { return as<Leg>(item) != nullptr; });
}

}  // namespace

Region LegReach::clear() const { return shadows.empty() ? reached : without(reached, all_of(shadows)); }

GrainState grain_state(const Newcomer& newcomer) {
  const Bin* bin = as<Bin>(newcomer.item);
  return bin == nullptr || bin->use == BinUse::wet_holding ? GrainState::wet : GrainState::dry;
}

const Rule& slope_rule(const Newcomer& newcomer) {
  return reach::slope_rule(Spout{.state = grain_state(newcomer)}, newcomer.rules);
}

reach::SpoutLine spout_to(const Newcomer& newcomer, const Leg& leg, SitePoint place) {
  const DesignSurface& surface = newcomer.answers.surface;
  return {leg.at, place, reach::outlet_level_m(leg, surface),
          surface.level_m(place) + *reach::inlet_height_m(newcomer.item.thing)};
}

std::vector<LegReach> leg_reaches(const Newcomer& newcomer) {
  std::vector<LegReach> all;
  if (!is_filled_by_spout(newcomer.item.thing)) return all;
  for (const Item& item : newcomer.site.items) {
    if (as<Leg>(item) != nullptr && has_outlet_left(newcomer, item)) all.push_back(reach_of(newcomer, item));
  }
  return all;
}

KeepOffs off_reach(const Newcomer& newcomer, const std::vector<LegReach>& reaches) {
  if (!is_filled_by_spout(newcomer.item.thing) || !any_leg(newcomer.site)) return {};
  const Region lot{Polygon{newcomer.site.lot.corners, {}}};
  if (reaches.empty()) {
    const Rule& rule = newcomer.rules.at("reach.outlets");
    return {{rule.id, {}, "would be filled by no leg: none has an outlet left", rule.value, Verdict::fail, lot}};
  }
  Region reached;
  for (const LegReach& one : reaches) reached.insert(reached.end(), one.reached.begin(), one.reached.end());
  reached = united(reached);
  KeepOffs all = off_shadows(newcomer, reaches, reached);
  const Rule& rule = slope_rule(newcomer);
  all.push_back({rule.id,
                 {},
                 "lies too far from every leg with an outlet left",
                 rule.value,
                 Verdict::fail,
                 without(lot, reached)});
  return all;
}

std::optional<ItemId> leg_for(const Newcomer& newcomer, SitePoint place) {
  std::optional<ItemId> best;
  double steepest_deg = slope_rule(newcomer).value;
  const double clear_m = newcomer.rules.at("reach.clear-of-roofs").value;
  for (const Item& item : newcomer.site.items) {
    const Leg* leg = as<Leg>(item);
    if (leg == nullptr || !has_outlet_left(newcomer, item)) continue;
    const reach::SpoutLine line = spout_to(newcomer, *leg, place);
    if (line.slope().as_degrees() < steepest_deg) continue;
    const bool is_clear = std::ranges::none_of(newcomer.site.items, [&](const Item& other) {
      const auto solid = other.id == item.id ? std::nullopt : reach::solid_of(other, newcomer.answers.surface);
      return solid && comes_within(line, *solid, clear_m);
    });
    if (!is_clear) continue;
    best = item.id;
    steepest_deg = line.slope().as_degrees();
  }
  return best;
}

}  // namespace yardwright::grow
