#include "editor/session/selection_edits.hpp"

#include <algorithm>

#include "editor/session/new_ids.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::session {

namespace {

template <class Change>
Edits changed(const Site& site, const Selection& selection, Change change) {
  Edits edits;
  for (const ItemId id : selection) {
    const Item* item = find(site, id);
    if (item == nullptr || as<Spout>(*item) != nullptr) continue;
    Item other = *item;
    other.thing = change(item->thing);
    edits.push_back(PutItem{std::move(other)});
  }
  return edits;
}

SitePoint middle_of(const Site& site, const Selection& selection) {
  std::vector<SitePoint> places;
  for (const ItemId id : selection) {
    if (const Item* item = find(site, id); item != nullptr && as<Spout>(*item) == nullptr)
      places.push_back(place_of(item->thing));
  }
  if (places.empty()) return {};
  const Box box = box_of(places);
  return between(box.low, box.high, 0.5);
}

Item copy_of(const Item& item, const NewIds& ids, SiteVector by, int phase) {
  Item copy = with_new_ids(item, ids);
  copy.phase = phase;
  if (copy.gone_in && *copy.gone_in <= phase) copy.gone_in.reset();
  if (!copy.name.empty()) copy.name += " copy";
  copy.thing = yardwright::moved(copy.thing, by);
  return copy;
}

}  // namespace

Edits moved(const Site& site, const Selection& selection, SiteVector by) {
  return changed(site, selection, [&](const Thing& thing) { return yardwright::moved(thing, by); });
}

Edits turned(const Site& site, const Selection& selection, Angle clockwise) {
  const SitePoint pivot = middle_of(site, selection);
  return changed(site, selection, [&](const Thing& thing) { return yardwright::turned(thing, pivot, clockwise); });
}

Edits removed(const Selection& selection) {
  Edits edits;
  for (const ItemId id : selection) edits.push_back(RemoveItem{id});
  return edits;
}

Duplicated duplicated(const Site& site, const Selection& selection, SiteVector by, int phase) {
  Duplicated result;
  NewIds ids;
  int next = next_id(site).number;
  for (const ItemId id : selection) ids[id] = ItemId{next++};
  for (const ItemId id : selection) {
    const Item* item = find(site, id);
    if (item == nullptr) continue;
    result.edits.push_back(PutItem{copy_of(*item, ids, by, phase)});
    result.copies.push_back(ids.at(id));
  }
  return result;
}

Selection still_there(const Site& site, const Selection& selection) {
  Selection left;
  std::ranges::copy_if(selection, std::back_inserter(left), [&](ItemId id) { return find(site, id) != nullptr; });
  return left;
}

}  // namespace yardwright::session
