// Every field of a thing as text, in file order: for telling two of them apart in words. Nested fields carry the label of
// what they lie in: "pit, pit depth".
#pragma once

#include <string>
#include <vector>

#include "geom/site/site.hpp"

namespace yardwright::grow {

struct FieldText {
  std::string label;
  std::string exact;   ///< the same for the same value, to a micrometre
  std::string shown;   ///< for reading
  std::string full;    ///< as many digits as it has
  bool drawn = false;  ///< a place or a line on the plan
};
using FieldTexts = std::vector<FieldText>;

/// `site` has the names of what is referred to.
FieldTexts field_texts(const Thing& thing, const Site& site, UnitSystem units);
FieldTexts field_texts(const Storm& storm, const Site& site, UnitSystem units);
FieldTexts field_texts(const Ground& ground, const Site& site, UnitSystem units);

}  // namespace yardwright::grow
