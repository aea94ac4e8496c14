#include "geom/grow/outlets.hpp"

#include <algorithm>

namespace yardwright::grow {

namespace {

constexpr int most_outlets = 24;  // that a leg's field allows

bool is_in(const std::vector<ItemId>& items, ItemId id) { return std::ranges::count(items, id) > 0; }

}  // namespace

int used_outlets(const Site& site, ItemId leg, const std::vector<ItemId>& gone) {
  int used = 0;
  for_each<Spout>(site, [&](const Item& item, const Spout& spout) {
    used += spout.from == leg && !is_in(gone, item.id) && !is_in(gone, spout.to) ? 1 : 0;
  });
  return used;
}

int free_outlets(const Site& site, const std::vector<ItemId>& gone) {
  int free = 0;
  for_each<Leg>(site, [&](const Item& item, const Leg& leg) {
    free += std::max(0, leg.outlets - used_outlets(site, item.id, gone));
  });
  return free;
}

std::vector<ItemId> outlet_takers(const Site& site, int phase) {
  std::vector<ItemId> all;
  for_each<Spout>(site, [&](const Item& item, const Spout& spout) {
    if (item.phase != phase) return;
    const Item* to = find(site, spout.to);
    const ItemId taker = to != nullptr && to->phase == phase ? to->id : item.id;
    if (!is_in(all, taker)) all.push_back(taker);
  });
  return all;
}

Mend wider_distributor(const Item& leg, int outlets) {
  Item wider = leg;
  std::get<Leg>(wider.thing).outlets = outlets;
  return {"give " + title_of(leg) + " a distributor with more outlets",
          Quantity::count,
          static_cast<double>(outlets - as<Leg>(leg)->outlets),
          static_cast<double>(outlets),
          {PutItem{wider}}};
}

std::optional<Mend> wider_distributor_for(const Site& site, ItemId taker, int left) {
  const Item* leg = nullptr;
  for_each<Spout>(site, [&](const Item& item, const Spout& spout) {
    if (item.id == taker || spout.to == taker) leg = find(site, spout.from);
  });
  if (leg == nullptr || as<Leg>(*leg) == nullptr) return std::nullopt;
  const int outlets = used_outlets(site, leg->id) + left;
  return outlets <= most_outlets ? std::optional{wider_distributor(*leg, outlets)} : std::nullopt;
}

}  // namespace yardwright::grow
