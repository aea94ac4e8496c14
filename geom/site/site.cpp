#include "geom/site/site.hpp"

#include <algorithm>

namespace yardwright {

const Item* find(const Site& site, ItemId id) {
  const auto found = std::ranges::find(site.items, id, &Item::id);
  return found == site.items.end() ? nullptr : &*found;
}

ItemId next_id(const Site& site) {
  int highest = 0;
  for (const Item& item : site.items) highest = std::max(highest, item.id.number);
  return {highest + 1};
}

Site as_of(const Site& site, int phase) {
  Site then = site;
  std::erase_if(then.items,
                [phase](const Item& item) { return item.phase > phase || (item.gone_in && *item.gone_in <= phase); });
  return then;
}

Lot rectangular_lot(double length_m, double width_m, LotEdge edge) {
  return {{{0, 0}, {length_m, 0}, {length_m, width_m}, {0, width_m}}, std::vector<LotEdge>(4, edge)};
}

}  // namespace yardwright
