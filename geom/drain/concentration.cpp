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
  Way(const Flow& flow, const CoverMap& covers, const ChannelMap& channels, const std::vector<Cell>& way)
      : flow_{flow}, covers_{covers}, channels_{channels}, way_{way}, path_{as_path(flow.frame, way)} {}

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

  /// From a cell on as long as it runs in the same channel, or in none over ground that is paved or is not.
  Stretch alike_from(std::size_t first) const {
    Stretch stretch{first, first};
    while (stretch.last + 1 < way_.size() && alike(stretch.last, first)) {
      stretch.length_m += distance(path_[stretch.last], path_[stretch.last + 1]);
      ++stretch.last;
    }
    return stretch;
  }

  std::int32_t channel_at(std::size_t i) const { return channels_.at(way_[i]); }
  const CellCover& cover_at(std::size_t i) const { return covers_.at(way_[i]); }
  SitePoint at(std::size_t i) const { return path_[i]; }
  bool ends_at(std::size_t i) const { return i + 1 >= way_.size(); }
  double slope_ratio(const Stretch& stretch) const {
    return stretch.length_m > 0 ? std::max(level_m(stretch.first) - level_m(stretch.last), 0.0) / stretch.length_m : 0;
  }

 private:
  bool alike(std::size_t i, std::size_t j) const {
    return channel_at(i) == channel_at(j) && (channel_at(i) >= 0 || cover_at(i).paved == cover_at(j).paved);
  }
  double level_m(std::size_t i) const { return flow_.filled_m[static_cast<std::size_t>(way_[i])]; }

  const Flow& flow_;
  const CoverMap& covers_;
  const ChannelMap& channels_;
  const std::vector<Cell>& way_;
  SitePath path_;
};

double sum_of(const std::vector<TravelSegment>& segments, Travel travel, double TravelSegment::*value) {
  double sum = 0;
  for (const TravelSegment& segment : segments)
    if (segment.travel == travel) sum += segment.*value;
  return sum;
}

}  // namespace

TravelSegment sheet_segment(double length_m, double slope_ratio, double sheet_n, double two_year_rain_m) {
  const double time_s = sheet_flow_s(sheet_n, length_m, slope_ratio, two_year_rain_m);
  TravelSegment sheet{Travel::sheet, length_m, slope_ratio, time_s > 0 ? length_m / time_s : 0, time_s};
  sheet.sheet_n = sheet_n;
  sheet.two_year_rain_m = two_year_rain_m;
  return sheet;
}

TravelSegment shallow_segment(double length_m, double slope_ratio, bool paved) {
  const double speed = shallow_flow_m_per_s(slope_ratio, paved);
  TravelSegment shallow{Travel::shallow, length_m, slope_ratio, speed, length_m / speed};
  shallow.paved = paved;
  return shallow;
}

TravelSegment channel_segment(double length_m, double slope_ratio, const DrawnChannel& channel) {
  const double speed = channel.speed_m_per_s(std::max(slope_ratio, least_slope_ratio));
  TravelSegment run{Travel::channel, length_m, slope_ratio, speed, length_m / speed};
  run.channel = channel;
  return run;
}

double Concentration::length_m(Travel travel) const { return sum_of(segments, travel, &TravelSegment::length_m); }
double Concentration::time_s(Travel travel) const { return sum_of(segments, travel, &TravelSegment::time_s); }
double Concentration::total_s() const {
  double sum_s = 0;
  for (const TravelSegment& segment : segments) sum_s += segment.time_s;
  return sum_s;
}

Concentration concentration_along(const Flow& flow, const CoverMap& covers, const ChannelMap& channels,
                                  const std::vector<Cell>& way, double two_year_rain_m) {
  Concentration parts;
  if (way.size() < 2) return parts;
  const Way run{flow, covers, channels, way};
  const auto add = [&](TravelSegment segment, const Stretch& stretch) {
    segment.begins = run.at(stretch.first);
    segment.ends = run.at(stretch.last);
    parts.segments.push_back(segment);
  };
  const Stretch sheet = run.sheet();
  if (sheet.length_m > 0)
    add(sheet_segment(sheet.length_m, run.slope_ratio(sheet), covers.at(way.front()).sheet_n, two_year_rain_m), sheet);
  for (std::size_t at = sheet.last; !run.ends_at(at);) {
    const Stretch stretch = run.alike_from(at);
    const double slope = run.slope_ratio(stretch);
    if (const std::int32_t number = run.channel_at(at); number < 0)
      add(shallow_segment(stretch.length_m, slope, covers.at(way[at]).paved), stretch);
    else
      add(channel_segment(stretch.length_m, slope, channels.channels[static_cast<std::size_t>(number)]), stretch);
    at = stretch.last;
  }
  return parts;
}

}  // namespace yardwright::drain
