#include "geom/grow/lanes.hpp"

#include <algorithm>

#include "geom/shape/innermost.hpp"
#include "geom/shape/spread.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::grow {

namespace {

constexpr double nudge_m = 0.01;  // past an edge, and how near is on it

/// Scales and a load-out's stand are driven over and under.
bool is_driven_through(const Item& item) {
  const OverheadHolding* stand = as<OverheadHolding>(item);
  return as<Scale>(item) != nullptr || (stand != nullptr && stand->use == HoldingUse::load_out);
}

/// The walls of what stands, and the open holes of pits and boots; a dump's own is under its grate.
std::vector<Outline> blocked_by(const Item& item) {
  std::vector<Outline> parts;
  if (is_driven_through(item)) return parts;
  if (const auto hole = pit_hole(item.thing); hole && as<Receiving>(item) == nullptr) parts.emplace_back(*hole);
  if (const auto solid = footprint(item.thing)) parts.push_back(*solid);
  return parts;
}

Region grown_all(const std::vector<Outline>& parts, double by_m, double off_m) {
  const Polygon around = around_disc({}, by_m, off_m);
  Region all;
  for (const Outline& part : parts) {
    if (const Disc* disc = std::get_if<Disc>(&part))
      all.push_back(around_disc(disc->centre, disc->radius_m + by_m, off_m));
    else
      std::ranges::move(outline_grown_by(part, around, 0), std::back_inserter(all));
  }
  return all;
}

bool meets(const Polygon& piece, const SitePath& line) { return nearest_pair(piece, line).distance_m < nudge_m; }

/// Pieces of ground on which the middle of a lane can lie, and what lies on each.
class Grounds {
 public:
  explicit Grounds(Region pieces) : pieces_{std::move(pieces)}, met_(pieces_.size()) {}

  void meet(const LaneGoal& goal, const SitePath& line) {
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
      if (meets(pieces_[i], line)) met_[i].push_back(goal);
    }
  }
  /// Those with a gate and an end of a dump on one piece.
  LaneGoals joined() const {
    LaneGoals all;
    for (const LaneGoals& some : met_) {
      const auto is_gate = [](const LaneGoal& goal) { return goal.end == 0; };
      const auto gates = std::ranges::count_if(some, is_gate);
      if (gates > 0 && gates < std::ssize(some)) all.insert(all.end(), some.begin(), some.end());
    }
    std::ranges::sort(all);
    all.erase(std::unique(all.begin(), all.end()), all.end());
    return all;
  }

 private:
  Region pieces_;
  std::vector<LaneGoals> met_;
};

}  // namespace

Lanes::Lanes(const Site& site) : lot_{site.lot.corners, {}} {
  for (const Item& item : site.items) {
    if (auto parts = blocked_by(item); !parts.empty()) blocks_.push_back({item.id, item.phase, std::move(parts)});
  }
  for_each<Gate>(site, [&](const Item& item, const Gate& gate) {
    gates_.push_back({item.id, {gate.at, gate.facing}, gate.width_m});
  });
  for_each<Receiving>(site, [&](const Item& item, const Receiving& dump) {
    dumps_.push_back({item.id, {dump.at, dump.facing}, dump.length_m});
  });
}

/// Where the middle of a lane cannot lie.
Region Lanes::taken(double width_m, const std::vector<ItemId>& gone, double off_m) const {
  Region pieces;
  const Box lot = box_of(lot_.outer);
  for (const LaneBlock& block : blocks_) {
    if (std::ranges::count(gone, block.item) > 0) continue;
    for (Polygon& piece : grown_all(block.parts, width_m / 2, off_m)) {
      if (gap_m(box_of(piece.outer), lot) <= 0) pieces.push_back(std::move(piece));
    }
  }
  return united(pieces);
}

LaneGoals Lanes::reached(double width_m, const std::vector<ItemId>& gone, double off_m) const {
  const Region inner = offset({lot_}, -width_m / 2);
  Grounds grounds{without(inner, taken(width_m, gone, off_m))};
  for (const Door& gate : gates_) {
    if (gate.size_m < width_m || inner.empty()) continue;
    const SitePoint foot = contains(inner, gate.pose.at) ? gate.pose.at : nearest_edge(inner, gate.pose.at).b;
    const SiteVector in = foot == gate.pose.at ? direction(gate.pose.facing) : unit(foot - gate.pose.at);
    const SiteVector aside = left_of(in) * ((gate.size_m - width_m) / 2);
    const SitePoint mouth = foot + in * nudge_m;
    grounds.meet({gate.item, 0}, {mouth - aside, mouth + aside});
  }
  for (const Door& dump : dumps_) {
    for (const int end : {-1, 1}) {
      const double out_m = dump.size_m / 2 + width_m / 2 + off_m + nudge_m;
      const SitePoint before = dump.pose.at + direction(dump.pose.facing) * (end * out_m);
      grounds.meet({dump.item, end}, {before, before});
    }
  }
  return grounds.joined();
}

double Lanes::widest_m(const LaneGoals& goals, double low_m, double high_m, double off_m) const {
  const double drawn_off_m = off_m / 4;
  if (holds_all(reached(high_m, {}, drawn_off_m), goals)) return high_m;
  while (high_m - low_m > off_m / 2) {
    const double middle_m = (low_m + high_m) / 2;
    (holds_all(reached(middle_m, {}, drawn_off_m), goals) ? low_m : high_m) = middle_m;
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
