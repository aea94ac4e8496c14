// What a storm brings to one pit: the ground that drains to it, its runoff and peaks, and how high the water stands
// around its rim. Where the pit lies in a depression, each of its hollows is filled by the runoff of its own ground and
// by what spills over from the next one, up to the spill level, with nothing soaking away, no pump, and every hollow
// higher up taken as full: the safe side. Levels in metres in the levels of the ground.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geom/drain/concentration.hpp"
#include "geom/drain/cover_map.hpp"
#include "geom/drain/flow.hpp"
#include "geom/drain/recurrence.hpp"
#include "geom/drain/unit_hydrograph.hpp"
#include "geom/ground/design_surface.hpp"
#include "geom/site/site.hpp"

namespace yardwright::drain {

/// Water standing around a pit.
struct PondAtPit {
  std::int32_t depression = no_depression;
  double level_m = 0;
  double spill_level_m = 0;
  double holds_m3 = 0;  ///< to the spill level
};

struct PitWater {
  ItemId item;
  SitePoint at;
  double ground_level_m = 0;  ///< at its centre
  double rim_level_m = 0;
  double catchment_m2 = 0;
  std::vector<SitePath> catchment_rings;  ///< closed, filled by the even-odd rule
  SitePath longest_way;                   ///< of its water, from the far end down
  std::vector<CoverPart> covers;          ///< of the catchment
  double curve_number = 0;
  double rational_c = 0;
  Concentration concentration;
  double runoff_m3 = 0;
  GraphicalPeak peak;
  std::optional<double> rational_peak_m3_per_s;  ///< where it is known how the storm's rain falls
  std::optional<HydrographPeak> routed_peak;     ///< by the unit hydrograph; likewise
  std::optional<PondAtPit> pond;
  std::optional<Recurrence> over_rim;  ///< how often the pond reaches the rim, where a rain table is known
};

/// Hollows shallower than this count as rough ground.
inline constexpr double least_pond_depth_m = 0.05;
inline constexpr double least_pond_volume_m3 = 1.0;
bool worth_showing(const Depression& depression);

/// Nothing for an item without a pit, or with one outside the ground. `curve` is how the storm's rain falls; it may be
/// not known.
std::optional<PitWater> pit_water(const Item& item, const DesignSurface& surface, const Flow& flow,
                                  const CoverMap& covers, const ChannelMap& channels, const Storm& storm,
                                  const MassCurve& curve);

/// The ground that drains to its rim, or to the pond that reaches its rim; nothing likewise.
std::vector<Cell> catchment_of_pit(const Item& item, const Flow& flow);

}  // namespace yardwright::drain
