// Where the next thing can stand, drawn over the plan in site metres: the ground of its middle, its best spots, and the
// things that could be built.
#pragma once

#include "geom/grow/grow.hpp"
#include "geom/sheet/plan_parts.hpp"

namespace yardwright {

/// Ground that is against no rule, and paler that which advice alone speaks against.
Drawing allowed_drawing(const grow::AllowedRegion& region);
/// The newcomer at each place as a broken outline, numbered in this order.
Drawing ghosts_drawing(const grow::Newcomer& newcomer, const std::vector<SitePoint>& places);
/// What a proposal builds, from the first number that is new: its bins numbered, and their spouts; `grown` is the yard with it.
Drawing proposal_drawing(const Site& grown, ItemId first_new);
/// Grow's own plan in the plan set: that ground, the next bin at its best spots, and what each has to spare. `answers` are of
/// the site; the shipped catalogues.
PlanParts grow_parts(const Site& site, const Answers& answers, const Catalogs& catalogs, const PlanStyle& style);

/// Where one reason keeps it off.
Drawing keep_off_drawing(const grow::KeepOff& reason);

}  // namespace yardwright
