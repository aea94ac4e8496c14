#include "geom/grow/lanes.hpp"

#include <algorithm>

#include "geom/shape/innermost.hpp"
#include "geom/shape/spread.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::grow {

namespace {

constexpr double grown_off_m = 0.01;  // round corners are drawn around their circle, no farther off
constexpr double nudge_m = 0.02;      // past an edge that is grown so
constexpr double meets_m = 0.01;

/// Scales and a load-out's stand are driven over and under.
bool is_driven_through(const Item& item) {
  const OverheadHolding* stand = as<OverheadHolding>(item);
  return as<Scale>(item) != nullptr || (stand != nullptr && stand->use == HoldingUse::load_out);
}

/// The walls of what stands, and the open holes of pits and boots; a dump's own is under its grate.
Region blocked_by(const Item& item) {
  Region parts;
  if (is_driven_through(item)) return parts;
  const auto solid = footprint(item.thing);
  if (const auto hole = pit_hole(item.thing); hole && as<Receiving>(item) == nullptr) parts.push_back(*hole);
  if (const Polygon* polygon = solid ? std::get_if<Polygon>(&*solid) : nullptr) parts.push_back(*polygon);
  if (const Disc* disc = solid ? std::get_if<Disc>(&*solid) : nullptr)
    parts.push_back(around_disc(disc->centre, disc->radius_m, grown_off_m / 2));
  return parts;
}

Region grown_all(const Region& parts, double by_m) {
  const Polygon around = around_disc({}, by_m, grown_off_m / 2);
  Region all;
  for (const Polygon& part : parts) std::ranges::move(outline_grown_by(part, around, 0), std::back_inserter(all));
  return all;
}

bool meets(const Polygon& piece, const SitePath& line) { return nearest_pair(piece, line).distance_m < meets_m; }

}  // namespace

Lanes::Lanes(const Site& site) : lot_{site.lot.corners, {}} {
  for (const Item& item : site.items) {
    if (Region outline = blocked_by(item); !outline.empty())
      blocks_.push_back({item.id, item.phase, std::move(outline)});
  }
  for_each<Gate>(site, [&](const Item& item, const Gate& gate) {
    gates_.push_back({item.id, {gate.at, gate.facing}, gate.width_m});
  });
  for_each<Receiving>(site, [&](const Item& item, const Receiving& dump) {
    dumps_.push_back({item.id, {dump.at, dump.facing}, dump.length_m});
  });
}

Region Lanes::free_ground(double width_m, const std::vector<ItemId>& gone, const Region& inner) const {
  Region taken;
  const Box lot = box_of(lot_.outer);
  for (const LaneBlock& block : blocks_) {
    if (std::ranges::count(gone, block.item) > 0) continue;
    for (Polygon& piece : grown_all(block.outline, width_m / 2)) {
      if (gap_m(box_of(piece.outer), lot) <= 0) taken.push_back(std::move(piece));
    }
  }
  return without(inner, united(taken));
}

LaneGoals Lanes::reached(double width_m, const std::vector<ItemId>& gone) const {
  const Region inner = offset({lot_}, -width_m / 2);
  const Region ground = free_ground(width_m, gone, inner);
  std::vector<std::vector<LaneGoal>> met(ground.size());
  std::vector<bool> has_gate(ground.size()), has_end(ground.size());
  const auto meet = [&](const LaneGoal& goal, const SitePath& line, std::vector<bool>& has) {
    for (std::size_t i = 0; i < ground.size(); ++i) {
      if (!meets(ground[i], line)) continue;
      met[i].push_back(goal);
      has[i] = true;
    }
  };
  for (const Door& gate : gates_) {
    if (gate.size_m < width_m || inner.empty()) continue;
    const SitePoint foot = contains(inner, gate.pose.at) ? gate.pose.at : nearest_edge(inner, gate.pose.at).b;
    const SiteVector in = foot == gate.pose.at ? direction(gate.pose.facing) : unit(foot - gate.pose.at);
    const SiteVector aside = left_of(in) * ((gate.size_m - width_m) / 2);
    const SitePoint mouth = foot + in * nudge_m;
    meet({gate.item, 0}, {mouth - aside, mouth + aside}, has_gate);
  }
  for (const Door& dump : dumps_) {
    for (const int end : {-1, 1}) {
      const double out_m = dump.size_m / 2 + width_m / 2 + nudge_m;
      const SitePoint before = dump.pose.at + direction(dump.pose.facing) * (end * out_m);
      meet({dump.item, end}, {before, before}, has_end);
    }
  }
  LaneGoals all;
  for (std::size_t i = 0; i < ground.size(); ++i) {
    if (has_gate[i] && has_end[i]) all.insert(all.end(), met[i].begin(), met[i].end());
  }
  std::ranges::sort(all);
  all.erase(std::unique(all.begin(), all.end()), all.end());
  return all;
}

double Lanes::widest_m(const LaneGoals& goals, double low_m, double high_m, double off_m) const {
  if (holds_all(reached(high_m), goals)) return high_m;
  while (high_m - low_m > off_m) {
    const double middle_m = (low_m + high_m) / 2;
    (holds_all(reached(middle_m), goals) ? low_m : high_m) = middle_m;
  }
  return low_m;
}

bool holds_all(const LaneGoals& reached, const LaneGoals& wanted) { return missing_of(reached, wanted).empty(); }

LaneGoals missing_of(const LaneGoals& reached, const LaneGoals& wanted) {
  LaneGoals missing;
  std::ranges::set_difference(wanted, reached, std::back_inserter(missing));
  return missing;
}

}  // namespace yardwright::grow
