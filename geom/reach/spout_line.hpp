// A spout as a straight line in space, from the distributor's outlet to the inlet of what it fills.
// Slope = atan(drop / plan run); length = run / cos(slope). Elementary geometry.
#pragma once

#include <optional>

#include "geom/reach/level.hpp"

namespace yardwright::reach {

struct SpoutLine {
  SitePoint from, to;
  double from_level_m = 0, to_level_m = 0;

  double run_m() const { return distance(from, to); }
  double drop_m() const { return from_level_m - to_level_m; }
  double length_m() const { return std::hypot(run_m(), drop_m()); }
  Angle slope() const { return Angle::of_slope(drop_m(), run_m()); }
};

/// Nothing where the spout joins no leg to something that a spout can fill.
std::optional<SpoutLine> spout_line(const Site& site, const Spout& spout, const DesignSurface& surface);

/// The leg discharge height, above the ground at the leg, at which a spout over `run_m` to an inlet at
/// `inlet_level_m` has the slope.
double discharge_needed_m(const Leg& leg, const DesignSurface& surface, double inlet_level_m, double run_m,
                          Angle slope);

}  // namespace yardwright::reach
