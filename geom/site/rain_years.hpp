// The rain of a return period from a yard's rain table, and what a new table makes of its storm.
#pragma once

#include <optional>

#include "geom/site/storm.hpp"

namespace yardwright {

/// The 24-hour depth in the row of so many years, where the table has one.
std::optional<double> rain_of_years(const RainTable& table, double years);

/// The storm with the table, its design rain and its two-year rain from the rows of their years; without such a row they
/// stay as they are.
Storm with_rain_table(Storm storm, RainTable table);

}  // namespace yardwright
