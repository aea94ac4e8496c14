// Which fields say anything of a thing as it is: a hopper's angle only where the floor is a hopper. The others keep their
// values, and show again once they apply.
#pragma once

#include "editor/session/field_rows.hpp"

namespace yardwright::session {

bool applies(const Thing& thing, std::string_view key);
bool applies(const Storm& storm, std::string_view key);

/// The rows of a thing that apply to it, in file order.
std::vector<FieldRow> shown_rows(const Thing& thing, UnitSystem units, const Catalogs& catalogs);

}  // namespace yardwright::session
