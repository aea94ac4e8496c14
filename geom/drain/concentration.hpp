// How long the farthest water of a catchment takes on its way, in the segments of TR-55: sheet flow over at most 100 ft, then
// shallow concentrated flow, anew where the ground turns paved or unpaved, and channel flow where the way runs in a drawn
// channel. Each on its own slope. Source: USDA NRCS, TR-55, 1986, chapter 3. Page: docs/methods/drain.md
#pragma once

#include <array>
#include <string_view>
#include <vector>

#include "geom/drain/channel_map.hpp"
#include "geom/drain/cover_map.hpp"
#include "geom/drain/flow.hpp"

namespace yardwright::drain {

enum class Travel : std::uint8_t { sheet, shallow, channel };
constexpr std::array<std::string_view, 3> names_of(Travel) { return {"sheet", "shallow", "channel"}; }

struct TravelSegment {
  Travel travel = Travel::sheet;
  double length_m = 0;
  double slope_ratio = 0;  ///< as it is; one under `least_slope_ratio` counts as that
  double speed_m_per_s = 0;
  double time_s = 0;
  double sheet_n = 0, two_year_rain_m = 0;  ///< of a sheet
  bool paved = false;                       ///< of shallow flow
  DrawnChannel channel;                     ///< of channel flow
  SitePoint begins, ends;
  bool operator==(const TravelSegment&) const = default;
};

/// Without places.
TravelSegment sheet_segment(double length_m, double slope_ratio, double sheet_n, double two_year_rain_m);
TravelSegment shallow_segment(double length_m, double slope_ratio, bool paved);
TravelSegment channel_segment(double length_m, double slope_ratio, const DrawnChannel& channel);

struct Concentration {
  std::vector<TravelSegment> segments;  ///< downstream

  double length_m(Travel travel) const;
  double time_s(Travel travel) const;
  double total_s() const;
  bool operator==(const Concentration&) const = default;
};

Concentration concentration_along(const Flow& flow, const CoverMap& covers, const ChannelMap& channels,
                                  const std::vector<Cell>& way, double two_year_rain_m);

}  // namespace yardwright::drain
