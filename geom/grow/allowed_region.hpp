// Where the place of a newcomer may lie, why not elsewhere, and the best spots. Within the lot, less one area for every
// reason (keep_off.hpp). A region's edge is where some rule is met to the inch. The ways of trucks, the water and the
// ground are taken as they are without the newcomer: once it is placed, every question is asked again.
// Method, tolerances and limits: docs/methods/grow.md.
#pragma once

#include "geom/grow/keep_off.hpp"

namespace yardwright::grow {

struct AllowedRegion {
  Region free;      ///< against no rule
  Region bearable;  ///< against rules of advice alone; holds `free`
  KeepOffs reasons;
};

/// Nothing of the lot where it is not drawn.
AllowedRegion allowed_region(const Newcomer& newcomer);

/// Why a place is not free, or how far it is from being so.
struct AtPlace {
  const KeepOff* reason = nullptr;
  double inside_m = 0;  ///< to the nearest place out of the reason's area; negative where it is out of it already
  SitePoint way_out;    ///< that place, or where the area begins
};

/// The reasons whose areas hold the place, the deepest first.
std::vector<AtPlace> reasons_at(const AllowedRegion& region, SitePoint place);
/// Those whose areas it lies nearest to, from free ground, the nearest first.
std::vector<AtPlace> nearest_reasons(const AllowedRegion& region, SitePoint place, std::size_t most);

struct Spot {
  SitePoint at;
  double margin_m = 0;  ///< it can be moved so far in any direction and stays allowed
  bool free = true;     ///< against no rule; else against advice alone
};

/// The places with the largest margins, so far apart that the newcomer could stand in each of them at once; the best
/// first. Free ones, and where there is none, bearable ones.
std::vector<Spot> best_spots(const Newcomer& newcomer, const AllowedRegion& region, std::size_t most);

/// What places it: the thing itself, and the spout of the leg that fills it.
Edits placed_at(const Newcomer& newcomer, SitePoint place);

}  // namespace yardwright::grow
