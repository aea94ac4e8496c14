// Whether what stands in a yard lies on ground that something built later needs: nearer to it than Clear's distances between
// walls, judged by Clear's own checks. Working rooms, lines and drives are not looked at. docs/methods/grow.md
#pragma once

#include "geom/clear/gap.hpp"

namespace yardwright::grow {

/// One that stands earlier against one that is built later.
struct LaterGap {
  ItemId earlier, later;
  clear::Gap gap;
};

/// The yard with what is built later in it, for both to stand at once.
Site with_later(Site site, const std::vector<Item>& later);

/// Things of the site that are still there when one of a later phase is built, its own or one of `later`, and both are solid: the
/// tightest gap of each earlier one, the tightest of all first. `beyond_m` is asked over Clear's distances. Of what keeps them
/// only the tightest of all is told.
std::vector<LaterGap> later_gaps(const Site& site, const std::vector<Item>& later, const DesignSurface& surface,
                                 const RuleBook& rules, double beyond_m = 0);

}  // namespace yardwright::grow
