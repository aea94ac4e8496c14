// A change of a site as a value: what the editor does, undoes and redoes, and what a finding's mend proposes.
// `apply` is the one writer of a Site.
#pragma once

#include <variant>
#include <vector>

#include "geom/site/site.hpp"

namespace yardwright {

/// Adds the item, or puts it in the place of the one with its id.
struct PutItem {
  Item item;
  bool operator==(const PutItem&) const = default;
};

/// Takes an item away, with the spouts, conveyors and route stops that name it.
struct RemoveItem {
  ItemId id;
  bool operator==(const RemoveItem&) const = default;
};

struct SetLot {
  Lot lot;
  bool operator==(const SetLot&) const = default;
};
struct SetGround {
  Ground ground;
  EarthTie tie;
  bool operator==(const SetGround&) const = default;
};
struct SetStorm {
  Storm storm;
  bool operator==(const SetStorm&) const = default;
};
struct SetName {
  std::string name;
  TitleBlock title;
  bool operator==(const SetName&) const = default;
};
struct SetUnits {
  UnitSystem units;
  bool operator==(const SetUnits&) const = default;
};
struct SetPhases {
  std::vector<std::string> phases;
  bool operator==(const SetPhases&) const = default;
};
/// Puts a site's own value for a rule.
struct SetRule {
  RuleOverride own;
  bool operator==(const SetRule&) const = default;
};
/// Goes back to the rule book's value.
struct ClearRule {
  std::string rule;
  bool operator==(const ClearRule&) const = default;
};

using Edit =
    std::variant<PutItem, RemoveItem, SetLot, SetGround, SetStorm, SetName, SetUnits, SetPhases, SetRule, ClearRule>;
using Edits = std::vector<Edit>;

Site apply(Site site, const Edit& edit);
Site apply(Site site, const Edits& edits);

}  // namespace yardwright
