// What differs between two versions of a yard, in words: items added, gone, moved by how much, fields changed; and the lot,
// the ground, the storm and the rules. Items are told apart by id, as copies of one file keep them. docs/methods/grow.md
#pragma once

#include <string>
#include <vector>

#include "geom/site/site.hpp"

namespace yardwright::grow {

enum class Differs : std::uint8_t { added, gone, changed, yard };
constexpr std::array<std::string_view, 4> names_of(Differs) { return {"added", "gone", "changed", "yard"}; }

struct Difference {
  Differs how = Differs::changed;
  ItemId item;        ///< nothing for the yard itself
  std::string words;  ///< "North 1: moved 12.0 ft to the north-east; diameter 36.0 ft becomes 42.0 ft"
  bool operator==(const Difference&) const = default;
};

/// From one to the other, in the order of their items, the yard itself last; none between a yard and itself. `rules` are the
/// shipped ones, in the units of `from`.
std::vector<Difference> differences(const Site& from, const Site& to, const RuleBook& rules);

}  // namespace yardwright::grow
