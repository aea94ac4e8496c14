// The findings of a yard as tables, a question each, and the cautions that every plan set carries.
#pragma once

#include <string_view>

#include "geom/sheet/sheet_table.hpp"
#include "geom/units/quantity.hpp"

namespace yardwright {

/// "Reach"
std::string title_of(Question question);
/// What the question asks, in a sentence.
std::string_view asked_by(Question question);

/// In the order of the questions; a question without findings says that it was not asked. Findings are numbered as
/// they stand in the list.
std::vector<Table> finding_tables(const Findings& findings, UnitSystem units);

/// Overhead lines, confined spaces, entrapment, dust, structure and wiring; and who decides.
Table cautions_table();

}  // namespace yardwright
