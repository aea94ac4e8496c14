// Whether each tile line is large enough for the storm: what comes to its inlets and roofs by the rational method, with the areas
// of all that run into it and the longest of their times, against what it carries full on its slope, as storm drains are sized.
// Source: FHWA HEC-22 4th ed., chapters 4 and 9. Page: docs/methods/drain.md
#pragma once

#include "geom/drain/catchment_water.hpp"
#include "geom/drain/tile_lines.hpp"
#include "geom/drain/unit_hydrograph.hpp"
#include "geom/site/finding.hpp"

namespace yardwright::drain {

/// The runoff of a line: area times rational C, and how long its farthest water takes to its end.
struct TileRunoff {
  double runoff_area_m2 = 0;
  double time_s = 0;
};

/// Of every line of the system.
std::vector<TileRunoff> tile_runoff(const Site& site, const TileSystem& tiles, const Flow& flow, const CoverMap& covers,
                                    const ChannelMap& channels);

/// Full, on its own slope, by Manning; 0 where it does not fall.
double carries_full_m3_per_s(const TilePipe& pipe);

/// The least size that is sold and carries a flow at the same inverts.
std::optional<double> least_tile_diameter_m(const TilePipe& pipe, double flow_m3_per_s);

Findings judge_tiles(const Site& site, const TileSystem& tiles, const std::vector<TileRunoff>& runoff,
                     const MassCurve& curve, const RuleBook& rules);

}  // namespace yardwright::drain
