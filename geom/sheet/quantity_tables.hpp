// The quantities page of a plan set: what the yard takes to build, line by line with what it is made of; and what it costs
// where the yard has a price book of its own. docs/methods/grow.md
#pragma once

#include <optional>

#include "geom/grow/cost.hpp"
#include "geom/sheet/sheet_table.hpp"

namespace yardwright {

/// Nothing of a yard without quantities. Invented prices are not printed.
std::vector<Table> quantity_tables(const Site& site, const DesignSurface& surface, const Catalogs& catalogs,
                                   const std::optional<PriceBook>& prices);

}  // namespace yardwright
