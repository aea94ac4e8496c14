// A storm's story in words for the sheets: its key beside the plan, and its tables of pits, culverts, walls and water.
#pragma once

#include "geom/sheet/plan_sheet.hpp"
#include "geom/sheet/sheet_column.hpp"
#include "geom/sheet/sheet_table.hpp"

namespace yardwright {

std::vector<KeyRow> storm_key(const Site& site, const StormSheet& storm);

/// Those that have rows.
std::vector<Table> storm_tables(const Site& site, const StormSheet& storm);

}  // namespace yardwright
