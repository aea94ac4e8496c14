#include "geom/drain/concentration.hpp"

#include <algorithm>

#include "geom/drain/runoff.hpp"

namespace yardwright::drain {

namespace {

// HEC-22 4th ed., chapter 4: sheet flow is most often under 100 ft (read).
constexpr double longest_sheet_m = 30.48;

/// A stretch of the way, by its cells.
struct Stretch {
  std::size_t first = 0, last = 0;
  double length_m = 0;
};

class Way {
 public:
  Way(const Flow& flow, const ChannelMap& channels, const std::vector<Cell>& way)
      : flow_{flow}, channels_{channels}, way_{way}, path_{as_path(flow.frame, way)} {}

  /// From its far end, as far as water runs in a sheet: never in a channel.
  Stretch sheet() const {
    Stretch sheet;
    while (sheet.last + 1 < way_.size() && channel_at(sheet.last) < 0) {
      const double step_m = distance(path_[sheet.last], path_[sheet.last + 1]);
      if (sheet.length_m + step_m > longest_sheet_m) break;
      sheet.length_m += step_m;
      ++sheet.last;
    }
    return sheet;
  }

  /// From a cell on as long as it runs in the same channel, or in none.
  Stretch alike_from(std::size_t first) const {
    Stretch stretch{first, first};
    while (stretch.last + 1 < way_.size() && channel_at(stretch.last) == channel_at(first)) {
      stretch.length_m += distance(path_[stretch.last], path_[stretch.last + 1]);
      ++stretch.last;
    }
    return stretch;
  }

  std::int32_t channel_at(std::size_t i) const { return channels_.at(way_[i]); }
  bool ends_at(std::size_t i) const { return i + 1 >= way_.size(); }
  double slope_ratio(const Stretch& stretch) const {
    return stretch.length_m > 0 ? std::max(level_m(stretch.first) - level_m(stretch.last), 0.0) / stretch.length_m : 0;
  }

 private:
  double level_m(std::size_t i) const { return flow_.filled_m[static_cast<std::size_t>(way_[i])]; }

  const Flow& flow_;
  const ChannelMap& channels_;
  const std::vector<Cell>& way_;
  SitePath path_;
};

}  // namespace

Concentration concentration_along(const Flow& flow, const CoverMap& covers, const ChannelMap& channels,
                                  const std::vector<Cell>& way, double two_year_rain_m) {
  Concentration parts;
  if (way.size() < 2) return parts;
  const Way run{flow, channels, way};
  const Stretch sheet = run.sheet();
  parts.sheet_m = sheet.length_m;
  if (sheet.length_m > 0)
    parts.sheet_s =
        sheet_flow_s(covers.at(way.front()).sheet_n, sheet.length_m, run.slope_ratio(sheet), two_year_rain_m);
  for (std::size_t at = sheet.last; !run.ends_at(at);) {
    const Stretch stretch = run.alike_from(at);
    const double slope = run.slope_ratio(stretch);
    if (const std::int32_t number = run.channel_at(at); number < 0) {
      parts.shallow_m += stretch.length_m;
      parts.shallow_s += stretch.length_m / shallow_flow_m_per_s(slope, covers.at(way[at]).paved);
    } else {
      const DrawnChannel& channel = channels.channels[static_cast<std::size_t>(number)];
      parts.channel_m += stretch.length_m;
      parts.channel_s += stretch.length_m / channel.speed_m_per_s(std::max(slope, least_slope_ratio));
    }
    at = stretch.last;
  }
  return parts;
}

}  // namespace yardwright::drain
