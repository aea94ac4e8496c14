// Sizes in words, as short as they can be read: on the plan and in the tables.
#pragma once

#include <string>

#include "geom/site/item.hpp"

namespace yardwright {

/// A thing's size: "36 ft across, eave 24 ft"; empty for what has none.
std::string size_words(const Thing& thing, UnitSystem units);

/// text_of without a fraction of nothing: "36 ft", not "36.0 ft".
std::string short_text_of(double si, Quantity quantity, UnitSystem units);

/// A bin's volume for a label: "21.7k bu" or "765 m3".
std::string short_volume_text(double grain_m3, UnitSystem units);

}  // namespace yardwright
