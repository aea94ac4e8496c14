#include "editor/session/seen_reach.hpp"

#include <algorithm>

namespace yardwright::session {

namespace {

using reach::CheckedSpout;
using reach::ReachRing;

bool has(const std::vector<ItemId>& ids, ItemId id) { return std::ranges::find(ids, id) != ids.end(); }
bool names(const std::vector<ItemId>& ids, const CheckedSpout& spout) {
  return has(ids, spout.spout) || has(ids, spout.receiver);
}

double shortfall(const CheckedSpout& spout) { return spout.least_slope.as_degrees() - spout.line.slope().as_degrees(); }

const Finding* pointed(const Session& session, const Answers& answers) {
  const auto& findings = answers.reach->findings;
  const auto found = std::ranges::find(findings, session.pointed_finding, &Finding::id);
  return found == findings.end() ? nullptr : &*found;
}

bool is_of_size(const ReachRing& ring, const Bin& bin) {
  return ring.diameter_m == bin.diameter_m && ring.eave_height_m == bin.eave_height_m;
}
bool is_same(const ReachRing& a, const ReachRing& b) {
  return a.leg == b.leg && a.diameter_m == b.diameter_m && a.eave_height_m == b.eave_height_m;
}

/// Whose rings are shown: legs with all their sizes, and bins of which all legs' rings of that size are shown.
struct Wanted {
  std::vector<ItemId> legs;
  std::vector<Bin> bins;
  ItemId only_leg;  ///< where not none, of the bins' rings only those of this leg

  bool takes(const ReachRing& ring) const {
    if (has(legs, ring.leg)) return true;
    if (only_leg && ring.leg != only_leg) return false;
    return std::ranges::any_of(bins, [&](const Bin& bin) { return is_of_size(ring, bin); });
  }
};

void want(Wanted& wanted, const Site& site, ItemId id) {
  const Item* item = find(site, id);
  if (item == nullptr) return;
  if (as<Leg>(*item) != nullptr) wanted.legs.push_back(id);
  if (const Bin* bin = as<Bin>(*item)) wanted.bins.push_back(*bin);
}

Wanted wanted_by(const Session& session, const Answers& answers) {
  Wanted wanted;
  if (const Item* item = lone_selected(session)) want(wanted, session.site(), item->id);
  if (!wanted.legs.empty() || !wanted.bins.empty()) return wanted;
  if (const CheckedSpout* spout = seen_spout(session, answers)) {
    want(wanted, session.site(), spout->receiver);
    wanted.only_leg = spout->leg;
  }
  return wanted;
}

}  // namespace

const CheckedSpout* seen_spout(const Session& session, const Answers& answers) {
  const auto& spouts = answers.reach->spouts;
  for (const CheckedSpout& spout : spouts) {
    if (names(session.selection, spout)) return &spout;
  }
  if (const Finding* finding = pointed(session, answers)) {
    for (const CheckedSpout& spout : spouts) {
      if (names(finding->items, spout)) return &spout;
    }
  }
  const auto worst = std::ranges::max_element(spouts, {}, shortfall);
  return worst == spouts.end() ? nullptr : &*worst;
}

std::vector<const ReachRing*> seen_rings(const Session& session, const Answers& answers) {
  const Wanted wanted = wanted_by(session, answers);
  std::vector<const ReachRing*> rings;
  for (const ReachRing& ring : answers.reach->rings) {
    const auto repeated = [&](const ReachRing* other) { return is_same(*other, ring); };
    if (wanted.takes(ring) && std::ranges::none_of(rings, repeated)) rings.push_back(&ring);
  }
  return rings;
}

}  // namespace yardwright::session
