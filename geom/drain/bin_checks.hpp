// Judges the ground around a bin: its fall away from the wall within 10 ft, and water that stands against it.
#pragma once

#include <optional>

#include "geom/drain/flow.hpp"
#include "geom/ground/design_surface.hpp"
#include "geom/site/finding.hpp"
#include "geom/site/mend_search.hpp"

namespace yardwright::drain {

/// The worst fall over 10 ft from the wall, and where. Ways that end in another building are left out.
struct FallAway {
  double grade_ratio = 0;
  SitePath way;  ///< from the wall out; empty where no way is free
};
FallAway fall_away(const Site& site, const Item& item, const DesignSurface& surface);

/// The lowest pad under a bin from whose edge the ground falls by the grade in every direction; its outline is one cell
/// wider than the bin. Nothing where the cells are too coarse to show it.
std::optional<Pad> pad_that_falls_away(const Site& site, const Item& item, const DesignSurface& surface,
                                       double grade_ratio);

/// The pad that keeps water from a wall is sought where there is time: it floods the ground again.
Findings judge_bin(const Site& site, const Item& item, const DesignSurface& surface, const Flow& flow,
                   const RuleBook& rules, MendSearch& search);

}  // namespace yardwright::drain
