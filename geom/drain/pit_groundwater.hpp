// Judges a pit by the highest groundwater of the year: whether it stands over the floor, so that it seeps in, and whether the
// pit, empty, is heavy enough not to be lifted. Its concrete is taken as the rules say. Page: docs/methods/storm.md
#pragma once

#include "geom/ground/design_surface.hpp"
#include "geom/site/finding.hpp"
#include "geom/site/rule.hpp"

namespace yardwright::drain {

/// Nothing where the site's groundwater is not known, or the item has no pit.
Findings judge_groundwater(const Site& site, const Item& item, const DesignSurface& surface, const RuleBook& rules);

}  // namespace yardwright::drain
