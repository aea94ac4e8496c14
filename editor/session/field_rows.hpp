// An item's fields as rows of text, and typed text back into the item: what a property card shows without knowing
// any kind. "36ft", "11m" and "36" are all understood; a bare number is in the site's units.
#pragma once

#include <string>
#include <vector>

#include "geom/site/catalog/catalogs.hpp"
#include "geom/site/site.hpp"
#include "geom/units/problem.hpp"

namespace yardwright::session {

enum class RowKind : std::uint8_t {
  number,     ///< typed, with a unit
  words,      ///< typed
  flag,       ///< "yes" or "no"
  choice,     ///< one of `choices`
  item,       ///< the number of an item; "0" is none
  item_list,  ///< numbers of items, parted by blanks
  line,       ///< shown only: a line is changed on the plan
};

struct Choice {
  std::string value;  ///< to hand to with_field
  std::string words;
  bool operator==(const Choice&) const = default;
};

struct FieldRow {
  std::string key;    ///< "boot-pit.depth"
  std::string group;  ///< label of the struct that it belongs to, or empty
  std::string label;
  std::string means;
  RowKind kind = RowKind::number;
  std::string text;  ///< for editing: nearer than a tape can tell
  std::vector<Choice> choices;
};

/// The fewest digits in the shown unit that are within a part of the value: by default what a tape could not tell apart,
/// "6 ft" for 1.8288 m.
std::string text_for_typing(double si, Quantity quantity, UnitSystem units, double same_ratio = 4e-7);

/// "own-field" as people say it: "own field".
std::string spoken(std::string_view key);

std::vector<FieldRow> field_rows(const Thing& thing, UnitSystem units, const Catalogs& catalogs);

/// The thing with one field typed anew; a Problem whose `where` is the field's label where the text cannot be taken.
tl::expected<Thing, Problem> with_field(Thing thing, std::string_view key, std::string_view text, UnitSystem units);

}  // namespace yardwright::session
