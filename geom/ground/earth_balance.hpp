// What becomes of the earth that is moved: cut earth shrinks where it is rolled into a fill and swells where it is loaded, so
// that cut and fill balance only by these; and the level of a pad that moves the least of it. docs/methods/ground.md
#pragma once

#include <optional>

#include "geom/ground/earthwork.hpp"

namespace yardwright {

struct EarthBalance {
  Earthwork earth;            ///< in place
  double made_of_cut_m3 = 0;  ///< fill that the cut makes, once rolled
  double loose_m3 = 0;        ///< of the whole cut, as it is loaded

  /// Positive where rolled fill is left over, negative where so much must be brought.
  double left_over_m3() const { return made_of_cut_m3 - earth.fill_m3; }
};

EarthBalance earth_balance(const Earthwork& earth, double shrink_ratio, double swell_ratio);

/// Of the site as it is designed, by its own shrink and swell.
EarthBalance earth_balance(const Site& site, const DesignSurface& surface);

struct PadLevel {
  double level_m = 0;
  EarthBalance balance;  ///< of this pad alone, on the ground as it lies
};

/// The level at which cut and fill of the pad, its slopes with them, are least together; and that at which the cut makes just
/// the fill. Nothing where the pad touches no ground.
std::optional<PadLevel> least_earth_level(const Site& site, const Pad& pad);
std::optional<PadLevel> balanced_level(const Site& site, const Pad& pad);

}  // namespace yardwright
