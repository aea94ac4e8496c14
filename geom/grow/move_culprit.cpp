#include "geom/grow/move_culprit.hpp"

#include <algorithm>
#include <functional>

#include "geom/clear/mend.hpp"
#include "geom/grow/grow.hpp"
#include "geom/grow/lanes.hpp"
#include "geom/grow/later_ground.hpp"
#include "geom/grow/outlets.hpp"
#include "geom/grow/prover.hpp"
#include "geom/grow/spout_reach.hpp"
#include "geom/shape/innermost.hpp"

namespace yardwright::grow {

namespace {

constexpr double off_edge_m = 0.05;
constexpr std::size_t most_spots = 4, most_proven = 12;
constexpr int ways_around = 16;
constexpr double first_step_m = 0.5, step_ratio = 1.3, farthest_m = 120;

std::vector<Question> ways_and_water(const Site& changed, const Site& before) {
  std::vector<Question> reading = questions_reading(changed, before);
  std::erase_if(reading, [](Question one) { return one != Question::turn && one != Question::drain; });
  return reading;
}

/// The yard without the thing, its answers, and the thing on its way back into it among all that is built later.
class WayBack {
 public:
  WayBack(const Outlook& outlook, const Item& item)
      : site_{apply(outlook.yard.site, RemoveItem{item.id})},
        answers_{answers_after(site_, outlook.yard, ways_and_water(site_, outlook.yard.site), MendSearch{false})} {
    std::vector<Item> later = outlook.later;
    std::erase_if(later, [](const Item& one) { return as<Spout>(one) != nullptr; });
    site_ = with_later(std::move(site_), later);
    const auto back = newcomer(site_, answers_, outlook.yard.catalogs.rules, item.thing, item.phase);
    if (!back) return;
    newcomer_.emplace(*back);
    region_ = allowed_region(*newcomer_);
  }
  WayBack(const WayBack&) = delete;
  WayBack& operator=(const WayBack&) = delete;

  const std::optional<Newcomer>& thing() const { return newcomer_; }
  const AllowedRegion& region() const { return region_; }

 private:
  Site site_;
  Answers answers_;
  std::optional<Newcomer> newcomer_;
  AllowedRegion region_;
};

void add_nearest(std::vector<SitePoint>& places, const Region& room, SitePoint from) {
  for (const Polygon& piece : room) places.push_back(nearest_edge({piece}, from).b);
}

/// The ends of every piece: where it stands there, it leaves the most beside it.
void add_ends(std::vector<SitePoint>& places, const Region& room) {
  for (const Polygon& piece : room) {
    for (int i = 0; i < 8; ++i) {
      const SiteVector way = direction(Bearing::degrees(45.0 * i + 1));
      places.push_back(
          *std::ranges::max_element(piece.outer, {}, [&](SitePoint p) { return dot(p - SitePoint{}, way); }));
    }
  }
}

void add_around(std::vector<SitePoint>& places, const Region& room, SitePoint from) {
  for (int i = 0; i < ways_around; ++i) {
    const SiteVector way = direction(Bearing::degrees(360.0 * i / ways_around));
    for (double by_m = first_step_m; by_m < farthest_m; by_m *= step_ratio) {
      if (holds(room, from + way * by_m)) places.push_back(from + way * by_m);
    }
  }
}

/// The nearest first.
std::vector<SitePoint> places_for(const WayBack& back, SitePoint from, bool all_around) {
  const AllowedRegion& region = back.region();
  const Region room = offset(region.free.empty() ? region.bearable : region.free, -off_edge_m);
  std::vector<SitePoint> places;
  add_nearest(places, room, from);
  add_ends(places, room);
  if (all_around) add_around(places, room, from);
  for (const Spot& spot : best_spots(*back.thing(), back.region(), most_spots)) places.push_back(spot.at);
  std::erase_if(places, [&](SitePoint at) { return distance(at, from) < off_edge_m; });
  std::ranges::stable_sort(places, {}, [&](SitePoint at) { return distance(at, from); });
  return places;
}

class Mover {
 public:
  Mover(const Findings& before, const Outlook& outlook, const Finding& finding, MendSearch& search)
      : before_{before},
        outlook_{outlook},
        finding_{finding},
        search_{search},
        item_{*find(outlook.yard.site, finding.items.front())} {}

  /// Where it is outlets that lack.
  std::optional<Mend> wider() const {
    const Site& site = outlook_.yard.site;
    if (finding_.rule != "grow.last-spot" || free_outlets(site) > 0) return std::nullopt;
    auto mend = wider_distributor_for(site, item_.id, 1);
    return mend && passes(yardwright::apply(site, mend->edits)) ? mend : std::nullopt;
  }

  std::optional<Mend> nearest() {
    const WayBack back{outlook_, item_};
    if (!back.thing()) return std::nullopt;
    const SitePoint from = place_of(item_.thing);
    std::size_t proven = 0;
    for (const SitePoint place : places_for(back, from, finding_.rule != "grow.last-spot")) {
      if (proven == most_proven || !search_.may_seek()) return std::nullopt;
      const Edits edits = edits_to(*back.thing(), place);
      const Site changed = apply(outlook_.yard.site, edits);
      if (!may_pass(changed)) continue;
      ++proven;
      if (!passes(changed)) continue;
      const double by_m = distance(place, from);
      return Mend{"move " + title_of(item_) + " " + std::string{compass_point(bearing_of(place - from))},
                  Quantity::length, by_m, by_m, edits};
    }
    return std::nullopt;
  }

 private:
  /// With the spouts that fill it, from the leg that does there.
  Edits edits_to(const Newcomer& thing, SitePoint place) const {
    Item there = item_;
    there.thing = moved(there.thing, place - place_of(item_.thing));
    Edits edits{PutItem{there}};
    const auto leg = is_filled_by_spout(item_.thing) ? leg_for(thing, place) : std::nullopt;
    for_each<Spout>(outlook_.yard.site, [&](const Item& item, const Spout& spout) {
      if (!leg || spout.to != item_.id || spout.from == *leg) return;
      Item hung = item;
      std::get<Spout>(hung.thing).from = *leg;
      edits.push_back(PutItem{hung});
    });
    return edits;
  }

  /// What can be told at once of the finding alone.
  bool may_pass(const Site& changed) const {
    const CheckedYard& yard = outlook_.yard;
    if (finding_.rule == "grow.last-way") {
      const double width_m = finding_.required;
      return holds_all(Lanes{changed}.reached(width_m), Lanes{yard.site}.reached(width_m, finding_.items));
    }
    if (finding_.rule == "grow.later-ground") {
      const auto gaps = later_gaps(changed, outlook_.later, yard.answers.surface, yard.catalogs.rules,
                                   yard.catalogs.rules.at("grow.later-ground").value);
      return std::ranges::none_of(
          gaps, [&](const LaterGap& one) { return one.earlier == item_.id && !clear::keeps(one.gap); });
    }
    const auto next = newcomer(changed, yard.answers, yard.catalogs.rules, outlook_.sought, item_.phase);
    return next && !allowed_region(*next).bearable.empty();
  }

  /// Grow asked again: it is gone, and nothing wants that did not before.
  bool passes(const Site& changed) const {
    const CheckedYard& yard = outlook_.yard;
    const Answers answers = answers_after(changed, yard, ways_and_water(changed, yard.site), MendSearch{false});
    const Answer again = ask(changed, answers, yard.catalogs, &outlook_.sought, MendSearch{false}, outlook_.later);
    return std::ranges::all_of(again.findings, [&](const Finding& one) {
      if (!is_wanting(one)) return true;
      return one.id != finding_.id &&
             std::ranges::any_of(before_, [&](const Finding& was) { return was.id == one.id && is_wanting(was); });
    });
  }

  const Findings& before_;
  const Outlook& outlook_;
  const Finding& finding_;
  MendSearch& search_;
  const Item& item_;
};

bool wants_move(const Finding& finding, const Site& site) {
  const bool is_of_place =
      finding.rule == "grow.last-spot" || finding.rule == "grow.last-way" || finding.rule == "grow.later-ground";
  if (!is_of_place || !is_wanting(finding) || finding.items.size() != 1) return false;
  const Item& item = *find(site, finding.items.front());
  return as<Leg>(item) == nullptr && clear::may_move(item) && path_of(item.thing) == nullptr;
}

}  // namespace

void add_moves(Findings& findings, const Outlook& outlook, MendSearch& search) {
  const Findings before = findings;
  for (Finding& finding : findings) {
    if (!wants_move(finding, outlook.yard.site) || !search.may_seek()) continue;
    Mover mover{before, outlook, finding, search};
    auto mend = mover.wider();
    if (!mend) mend = mover.nearest();
    if (mend) finding.mends.push_back(std::move(*mend));
  }
}

}  // namespace yardwright::grow
