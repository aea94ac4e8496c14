#include "geom/grow/room_to_move.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "geom/grow/allowed_region.hpp"
#include "geom/shape/innermost.hpp"

namespace yardwright::grow {

namespace {

constexpr std::array clear_of_edge_m{0.005, 0.05,
                                     0.3};  // beyond the region's edge: exact, sampled, and what Turn straightens
constexpr std::size_t most_pieces = 4;
constexpr int ways_around = 24;
constexpr std::size_t most_places = 24;
constexpr double farthest_m = 150;
constexpr double step_ratio = 1.4;

bool is_of(const KeepOff& reason, const Finding& finding) {
  return reason.rule == finding.rule && (!reason.item || std::ranges::count(finding.items, reason.item) > 0);
}

/// The lot less what the thing would break newly, and the finding's own reasons.
Region room_for(const KeepOffs& reasons, const Site& site, SitePoint place, const Finding& finding) {
  const Box lot = box_of(site.lot.corners);
  Region taken;
  for (const KeepOff& reason : reasons) {
    if (!is_of(reason, finding) && contains(reason.area, place)) continue;
    for (const Polygon& piece : reason.area) {
      if (gap_m(box_of(piece.outer), lot) <= 0) taken.push_back(piece);
    }
  }
  return without({Polygon{site.lot.corners, {}}}, united(taken));
}

class Mover {
 public:
  Mover(const Prover& prover, const Item& item, Region room)
      : prover_{prover}, item_{item}, from_{place_of(item.thing)}, room_{std::move(room)} {}

  /// Over the nearest edges first, then all around in growing steps.
  std::optional<Mend> nearest() const {
    for (const SiteVector& way : ways()) {
      if (prover_.stopped()) return std::nullopt;
      if (prover_.holds(edits(way))) return mend(way);
    }
    return std::nullopt;
  }

 private:
  Edits edits(SiteVector by) const {
    Item there = item_;
    there.thing = moved(there.thing, by);
    return {PutItem{there}};
  }

  std::vector<SiteVector> ways() const {
    std::vector<SiteVector> over = over_edges(), around = all_around();
    const auto by_length = [](SiteVector way) { return length(way); };
    std::ranges::stable_sort(over, {}, by_length);
    std::ranges::stable_sort(around, {}, by_length);
    if (around.size() > most_places) around.resize(most_places);
    over.insert(over.end(), around.begin(), around.end());
    return over;
  }

  std::vector<SiteVector> over_edges() const {
    std::vector<SiteVector> edges;
    for (const Polygon& piece : room_) edges.push_back(nearest_edge({piece}, from_).b - from_);
    std::ranges::stable_sort(edges, {}, [](SiteVector way) { return length(way); });
    if (edges.size() > most_pieces) edges.resize(most_pieces);
    std::vector<SiteVector> ways;
    for (const SiteVector edge : edges) {
      for (const double beyond_m : clear_of_edge_m) ways.push_back(edge + unit(edge) * beyond_m);
    }
    return ways;
  }

  /// The first place of the room in each direction.
  std::vector<SiteVector> all_around() const {
    std::vector<SiteVector> ways;
    for (int i = 0; i < ways_around; ++i) {
      const SiteVector way = direction(Bearing::degrees(360.0 * i / ways_around));
      for (double by_m = 0.25; by_m < farthest_m; by_m *= step_ratio) {
        if (!contains(room_, from_ + way * by_m)) continue;
        ways.push_back(way * by_m);
        break;
      }
    }
    return ways;
  }

  Mend mend(SiteVector by) const {
    const double by_m = length(by);
    return {"move " + title_of(item_) + " " + std::string{compass_point(bearing_of(by))}, Quantity::length, by_m, by_m,
            edits(by)};
  }

  const Prover& prover_;
  const Item& item_;
  SitePoint from_;
  Region room_;
};

KeepOffs reasons_without(const CheckedYard& yard, const Item& item) {
  const Site site = apply(yard.site, RemoveItem{item.id});
  const Catalogs& catalogs = yard.catalogs;
  Answers answers;
  answers.surface = design_surface(site);
  answers.turn = std::make_shared<const turn::Answer>(
      turn::ask(site, answers.surface, catalogs, {MendSearch{false}, yard.answers.turn.get()}));
  answers.drain = std::make_shared<const drain::Answer>(
      drain::ask(site, answers.surface, catalogs, {MendSearch{false}, yard.answers.drain.get()}));
  const auto back = newcomer(site, answers, catalogs.rules, item.thing, item.phase);
  return back ? allowed_region(*back).reasons : KeepOffs{};
}

}  // namespace

const KeepOffs& KnownReasons::of(const Item& item, const CheckedYard& yard) {
  const auto known = known_.find(item.id);
  if (known != known_.end()) return known->second;
  return known_.emplace(item.id, reasons_without(yard, item)).first->second;
}

std::optional<Mend> move_into_room(const Prover& prover, const Item& item, const KeepOffs& reasons) {
  const SitePoint place = place_of(item.thing);
  const Finding& finding = prover.finding();
  const bool is_own = std::ranges::any_of(
      reasons, [&](const KeepOff& reason) { return is_of(reason, finding) && contains(reason.area, place); });
  if (!is_own) return std::nullopt;
  return Mover{prover, item, room_for(reasons, prover.yard().site, place, finding)}.nearest();
}

}  // namespace yardwright::grow
