// What a list of findings says of one item.
#pragma once

#include "geom/site/finding.hpp"

namespace yardwright {

/// The worst verdict of the findings about an item; it passes where there is none.
Verdict verdict_on(const Findings& findings, ItemId id);

}  // namespace yardwright
