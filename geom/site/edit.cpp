#include "geom/site/edit.hpp"

#include <algorithm>

namespace yardwright {

namespace {

struct Writer {
  Site& site;

  void operator()(const PutItem& put) const {
    const auto found = std::ranges::find(site.items, put.item.id, &Item::id);
    if (found == site.items.end())
      site.items.push_back(put.item);
    else
      *found = put.item;
  }

  void operator()(const RemoveItem& remove) const {
    std::erase_if(site.items, [&](const Item& item) { return item.id == remove.id || hangs_on(item, remove.id); });
    for (Item& item : site.items) {
      if (Route* route = std::get_if<Route>(&item.thing)) std::erase(route->stops, remove.id);
      if (Conveyor* conveyor = std::get_if<Conveyor>(&item.thing)) let_go(*conveyor, remove.id);
      if (Tunnel* tunnel = std::get_if<Tunnel>(&item.thing)) let_go(*tunnel, remove.id);
    }
  }

  void operator()(const SetLot& set) const { site.lot = set.lot; }
  void operator()(const SetGround& set) const {
    site.ground = set.ground;
    site.tie = set.tie;
  }
  void operator()(const SetStorm& set) const { site.storm = set.storm; }
  void operator()(const SetName& set) const {
    site.name = set.name;
    site.title = set.title;
  }
  void operator()(const SetUnits& set) const { site.units = set.units; }
  void operator()(const SetPhases& set) const { site.phases = set.phases; }

  void operator()(const SetRule& set) const {
    auto& overrides = site.rule_overrides;
    const auto at = std::ranges::lower_bound(overrides, set.own.rule, {}, &RuleOverride::rule);
    if (at != overrides.end() && at->rule == set.own.rule)
      *at = set.own;
    else
      overrides.insert(at, set.own);
  }

  void operator()(const ClearRule& clear) const {
    std::erase_if(site.rule_overrides, [&](const RuleOverride& own) { return own.rule == clear.rule; });
  }

  static void let_go(auto& between, ItemId id) {
    if (between.from == id) between.from = {};
    if (between.to == id) between.to = {};
  }

  static bool hangs_on(const Item& item, ItemId id) {
    const Spout* spout = as<Spout>(item);
    const Downspout* downspout = as<Downspout>(item);
    return (spout != nullptr && (spout->from == id || spout->to == id)) ||
           (downspout != nullptr && downspout->of == id);
  }
};

}  // namespace

Site apply(Site site, const Edit& edit) {
  std::visit(Writer{site}, edit);
  return site;
}

Site apply(Site site, const Edits& edits) {
  for (const Edit& edit : edits) std::visit(Writer{site}, edit);
  return site;
}

}  // namespace yardwright
