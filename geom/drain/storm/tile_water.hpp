// Water through the buried pipes in one step of a storm: what each grate and roof gives, how much of it each line can take, and
// what comes out of its end. A full line takes the same share of everything that runs into it. Pipes hold no water: what goes
// in comes out in the same step. Cubic metres. Page: docs/methods/storm.md
#pragma once

#include <vector>

#include "geom/drain/tile_lines.hpp"

namespace yardwright::drain::storm {

/// What a line stands between, for how much it can take.
struct TileLevels {
  double start_m = 0;   ///< the highest water over its inlets; lower than its crown where none stands
  double outlet_m = 0;  ///< of the water beyond its end
};

struct TileShares {
  std::vector<double> of_line;    ///< of what runs into it: taken by it and all lines below it
  std::vector<double> out_m3;     ///< that comes out of the end of each line
  std::vector<double> wanted_m3;  ///< that would run into each line
};

/// `wanted_m3` is what inlets and roofs want to give each line. Lines in the order of the system.
TileShares tile_shares(const std::vector<TileRun>& lines, const std::vector<double>& wanted_m3,
                       const std::vector<TileLevels>& levels, double open_ratio, double step_s);

}  // namespace yardwright::drain::storm
