// The sections of a plan set: as many on a sheet as leaves each of them high enough to be read, each with its letter, its
// scales and a key. docs/methods/sheet.md
#pragma once

#include "geom/sheet/plan_page.hpp"

namespace yardwright {

/// Without frame and title strip. A storm's deepest water is in them where the set carries one.
std::vector<Page> section_sheets(const PlanSet& set, const SheetBox& box);

}  // namespace yardwright
