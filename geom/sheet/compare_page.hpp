// Versions of a yard on one page: their plans side by side at one scale, the lines of the comparison under them, and what
// differs from the first. As high as its words need. docs/methods/grow.md
#pragma once

#include "geom/grow/compare.hpp"
#include "geom/sheet/page.hpp"

namespace yardwright {

Page compare_page(const grow::Comparison& comparison, const Catalogs& catalogs);

}  // namespace yardwright
