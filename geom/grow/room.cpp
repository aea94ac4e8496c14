#include "geom/grow/room.hpp"

#include <algorithm>
#include <limits>

#include "geom/grow/spout_reach.hpp"

namespace yardwright::grow {

namespace {

int outlets_left(const Newcomer& newcomer) {
  int left = 0;
  for_each<Leg>(newcomer.site, [&](const Item& item, const Leg& leg) {
    int used = 0;
    for_each<Spout>(newcomer.site, [&](const Item&, const Spout& spout) { used += spout.from == item.id ? 1 : 0; });
    left += std::max(0, leg.outlets - used);
  });
  return left;
}

bool needs_outlet(const Newcomer& newcomer) {
  const bool any_leg = std::ranges::any_of(newcomer.site.items, [](const Item& i) { return as<Leg>(i) != nullptr; });
  return is_filled_by_spout(newcomer.item.thing) && any_leg;
}

double to_nearest_leg_m(const Site& site, SitePoint place) {
  double nearest_m = std::numeric_limits<double>::infinity();
  for_each<Leg>(site, [&](const Item&, const Leg& leg) { nearest_m = std::min(nearest_m, distance(leg.at, place)); });
  return nearest_m;
}

/// Those that are filled, and hang in no spout's way, with all before them in the yard; the rest of what is asked of them
/// the region and the packing have kept.
std::vector<SitePoint> proven(const Newcomer& newcomer, std::vector<SitePoint> places) {
  std::ranges::sort(places, {}, [&](SitePoint at) { return to_nearest_leg_m(newcomer.site, at); });
  Site site = newcomer.site;
  std::vector<SitePoint> stand;
  for (const SitePoint& place : places) {
    const auto next =
        yardwright::grow::newcomer(site, newcomer.answers, newcomer.rules, newcomer.item.thing, newcomer.item.phase);
    if ((needs_outlet(newcomer) && !leg_for(*next, place)) || is_under_a_spout(*next, place)) continue;
    site = yardwright::apply(std::move(site), placed_at(*next, place));
    stand.push_back(place);
  }
  return stand;
}

}  // namespace

Room room_for(const Newcomer& newcomer, const AllowedRegion& region, const PackingEffort& effort) {
  Room room;
  room.of_free_ground = !region.free.empty();
  const PackingTask task{room.of_free_ground ? region.free : region.bearable,
                         in_the_way_of(newcomer, newcomer.item.thing)};
  if (task.region.empty() || task.conflict.empty()) return room;
  room.at_most = most_places(task);
  if (needs_outlet(newcomer)) room.at_most = std::min(room.at_most, outlets_left(newcomer));
  PackingEffort bounded = effort;
  std::stop_source enough;
  const std::stop_callback pass_on{effort.stop, [&] { enough.request_stop(); }};
  bounded.stop = enough.get_token();
  bounded.found = [&](std::size_t places) {
    if (effort.found) effort.found(places);
    if (static_cast<int>(places) >= room.at_most) enough.request_stop();
  };
  room.places = proven(newcomer, packed(task, bounded));
  return room;
}

Region in_the_way_of(const Newcomer& newcomer, const Thing& other) {
  Site bare;
  bare.items.push_back(
      {ItemId{newcomer.item.id.number + 1}, "", newcomer.item.phase, {}, moved(other, SitePoint{} - place_of(other))});
  const Answers none;
  const Newcomer beside{bare, none, newcomer.rules, newcomer.item, newcomer.shape, newcomer.behind};
  Region pieces;
  for (const KeepOff& off : off_what_stands(beside)) pieces.insert(pieces.end(), off.area.begin(), off.area.end());
  return united(pieces);
}

Edits built_at(const Newcomer& newcomer, const std::vector<SitePoint>& places) {
  Edits edits;
  Site site = newcomer.site;
  for (const SitePoint& place : places) {
    auto next =
        yardwright::grow::newcomer(site, newcomer.answers, newcomer.rules, newcomer.item.thing, newcomer.item.phase);
    next->item.id = std::max(next->item.id, newcomer.item.id);
    const Edits one = placed_at(*next, place);
    site = yardwright::apply(std::move(site), one);
    edits.insert(edits.end(), one.begin(), one.end());
  }
  return edits;
}

}  // namespace yardwright::grow
