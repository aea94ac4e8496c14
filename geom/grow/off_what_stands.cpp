#include "geom/clear/demands.hpp"
#include "geom/clear/lot_setback.hpp"
#include "geom/clear/working_room.hpp"
#include "geom/grow/keep_off.hpp"

namespace yardwright::grow {

namespace {

/// The yard as Clear sees it with the newcomer in it. Distances between walls are asked wherever it stands, but for one
/// that an LP tank has only where it stands alone: so it is put where it does not.
struct ClearYard {
  explicit ClearYard(const Newcomer& newcomer)
      : site{newcomer.site}, yard{clear::yard_of(with(newcomer), newcomer.answers.surface, newcomer.rules)} {}

  const Site& with(const Newcomer& newcomer) {
    Item item = newcomer.item;
    for (const Item& other : site.items) {
      if (as<Tank>(item) != nullptr && as<Tank>(other) != nullptr) item.thing = newcomer.at(place_of(other.thing));
    }
    site.items.push_back(std::move(item));
    return site;
  }
  /// Null where no rule of Clear is about it.
  const clear::Solid* newest() const {
    const bool known = !yard.solids.empty() && yard.solids.back().item == &site.items.back();
    return known ? &yard.solids.back() : nullptr;
  }

  Site site;
  clear::Yard yard;
};

KeepOffs off_lot_edges(const Newcomer& newcomer, const clear::Solid& solid) {
  constexpr std::array why{"stands too near to the neighbour's line", "stands too near to the road",
                           "reaches over the edge of the lot"};
  const Lot& lot = newcomer.site.lot;
  KeepOffs all;
  for (const LotEdge kind : {LotEdge::neighbour, LotEdge::road, LotEdge::own_field}) {
    const Rule* rule = clear::edge_rule(solid, kind, newcomer.rules);
    if (rule == nullptr) continue;
    KeepOff off{rule->id, {}, why[static_cast<std::size_t>(kind)], rule->value, Verdict::fail, {}};
    for (std::size_t i = 0; i < lot.corners.size() && i < lot.edges.size(); ++i) {
      if (lot.edges[i] != kind) continue;
      const SitePath edge{lot.corners[i], lot.corners[(i + 1) % lot.corners.size()]};
      std::ranges::move(pieces_grown_by(edge, newcomer.behind, rule->value), std::back_inserter(off.area));
    }
    if (!off.area.empty()) all.push_back(std::move(off));
  }
  return all;
}

KeepOffs off_walls(const Newcomer& newcomer, const clear::Solid& solid, const clear::Yard& yard) {
  KeepOffs all;
  for (const clear::Demand& demand : clear::demands_on(solid, yard)) {
    all.push_back({demand.rule->id, demand.other->item->id, demand.breaks, demand.required_m, demand.worse,
                   outline_grown_by(demand.other->outline, newcomer.behind, demand.required_m)});
  }
  return all;
}

/// What looks into the room: "its fan".
std::string face_of(const clear::Room& room) {
  if (room.rule->id == "clear.fan-room") return "fan";
  return room.rule->id == "clear.unload-room" ? "unload tube" : "end";
}

KeepOff off_room(const clear::Room& room, ItemId item, std::string why, Region area) {
  return {room.rule->id, item, std::move(why), room.rule->value, Verdict::caution, std::move(area)};
}

KeepOffs off_rooms(const Newcomer& newcomer, const clear::Solid& solid, const clear::Yard& yard) {
  KeepOffs all;
  const std::vector<clear::Room> own = clear::rooms_of(newcomer.item, newcomer.rules);
  for (const clear::Solid& other : yard.solids) {
    if (other.item == solid.item) continue;
    if (clear::fills_rooms(solid)) {
      for (const clear::Room& room : clear::rooms_of(*other.item, newcomer.rules))
        all.push_back(off_room(room, other.item->id, "stands before the " + face_of(room) + " of",
                               {grown_by(room.area(), newcomer.behind, 0)}));
    }
    if (!clear::fills_rooms(other)) continue;
    for (const clear::Room& room : own)
      all.push_back(off_room(room, other.item->id, "has too little room at its " + face_of(room) + " before",
                             outline_grown_by(other.outline, turned_back(room.area(), {}), 0)));
  }
  return all;
}

}  // namespace

KeepOffs off_what_stands(const Newcomer& newcomer) {
  const ClearYard clear{newcomer};
  const clear::Solid* solid = clear.newest();
  if (solid == nullptr) return {};
  KeepOffs all = off_lot_edges(newcomer, *solid);
  std::ranges::move(off_walls(newcomer, *solid, clear.yard), std::back_inserter(all));
  std::ranges::move(off_rooms(newcomer, *solid, clear.yard), std::back_inserter(all));
  return all;
}

}  // namespace yardwright::grow
