// The schedules of a plan set: spouts with their levels and slopes, bins with their sizes, and every item with its
// size and place, so that a builder can set it out.
#pragma once

#include "geom/ground/design_surface.hpp"
#include "geom/sheet/sheet_table.hpp"
#include "geom/site/catalog/catalogs.hpp"

namespace yardwright {

/// Those tables that have rows, in that order.
std::vector<Table> schedule_tables(const Site& site, const DesignSurface& surface, const Catalogs& catalogs);

/// A thing's size in words: "36 ft, eave 24 ft"; empty for what has none.
std::string size_words(const Thing& thing, UnitSystem units);

/// text_of without a fraction of nothing: "36 ft", not "36.0 ft".
std::string short_text_of(double si, Quantity quantity, UnitSystem units);

}  // namespace yardwright
