#include "editor/session/new_ids.hpp"

namespace yardwright::session {

namespace {

struct Rejoin {
  const NewIds& ids;

  void operator()(const Field&, ItemId& id) const {
    if (const auto found = ids.find(id); found != ids.end()) id = found->second;
  }
  void operator()(const Field& field, std::vector<ItemId>& list) const {
    for (ItemId& id : list) (*this)(field, id);
  }
  template <class Member>
  void operator()(const Field&, Member&) const {}
};

NewIds ids_of_new(const Site& site, int phase, const Edits& edits) {
  const Site asked = as_of(site, phase);
  NewIds ids;
  int next = next_id(site).number;
  for (const Edit& edit : edits) {
    const PutItem* put = std::get_if<PutItem>(&edit);
    if (put != nullptr && find(asked, put->item.id) == nullptr && !ids.contains(put->item.id))
      ids[put->item.id] = ItemId{next++};
  }
  return ids;
}

}  // namespace

Item with_new_ids(Item item, const NewIds& ids) {
  if (const auto found = ids.find(item.id); found != ids.end()) item.id = found->second;
  std::visit([&](auto& kind) { visit_fields(kind, Rejoin{ids}); }, item.thing);
  return item;
}

Edits edits_of_whole(const Site& site, int phase, const Edits& edits) {
  const NewIds ids = ids_of_new(site, phase, edits);
  Edits whole = edits;
  for (Edit& edit : whole) {
    if (PutItem* put = std::get_if<PutItem>(&edit)) put->item = with_new_ids(std::move(put->item), ids);
  }
  return whole;
}

}  // namespace yardwright::session
