// The rain that Drain is asked about: its depth in 24 hours and how it falls over the day, as one of the NRCS
// distributions or as a table of the site's own. Times in seconds from the storm's start, shares of the 24-hour depth.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "geom/site/field.hpp"
#include "geom/site/kinds/cover.hpp"
#include "geom/units/problem.hpp"

namespace yardwright {

struct MassPoint {
  double time_s = 0;
  double fallen_ratio = 0;  ///< of the day's rain, by then
  bool operator==(const MassPoint&) const = default;
};

/// How the rain of a day mounts up, straight between its points: from nothing at time 0 to all of it at the last point,
/// within 24 hours. Without points it is not known.
struct MassCurve {
  std::vector<MassPoint> points;

  bool known() const { return !points.empty(); }
  /// 0 before the storm, 1 after it; the curve must be known.
  double fallen_ratio(double time_s) const;
  bool operator==(const MassCurve&) const = default;
};

/// "0 0, 6h 0.08, 12h 0.66, 24h 1": times, bare ones in hours, each with the share fallen by then. No text is no curve.
tl::expected<MassCurve, Problem> parse_mass_curve(std::string_view text);
/// Reads back as the same curve.
std::string text_of(const MassCurve& curve);

/// A depth of rain in 24 hours and how seldom it is reached or passed.
struct RainOfYears {
  double years = 1;
  double rain_m = 0;
  bool operator==(const RainOfYears&) const = default;
};

/// Depth and frequency of the 24-hour rain of a place, rarer and deeper from row to row. Without rows it is not known.
struct RainTable {
  std::vector<RainOfYears> rows;

  bool known() const { return !rows.empty(); }
  bool operator==(const RainTable&) const = default;
};

/// "2 3.0in, 10 4.5in, 100 7.1in": years, each with its depth. No text is no table.
tl::expected<RainTable, Problem> parse_rain_table(std::string_view text, UnitSystem bare);
/// Reads back as the same table.
std::string text_of(const RainTable& table, UnitSystem units);

enum class StormType : std::uint8_t { i, ia, ii, iii, own };
constexpr std::array<std::string_view, 5> names_of(StormType) { return {"I", "IA", "II", "III", "own"}; }

/// The rain that Drain is asked about, and the cover of ground that no Cover area tells of.
struct Storm {
  double rain_m = 0.127;  ///< 24-hour depth
  double return_period_years = 25;
  double two_year_rain_m = 0.0762;  ///< 2-year 24-hour depth, for sheet flow
  StormType type = StormType::ii;
  MassCurve own_curve;  ///< of a storm of type own
  RainTable table;      ///< how often how much falls
  double yard_life_years = 30;
  std::string cover = "farmstead";
  SoilGroup soil = SoilGroup::c;
  bool operator==(const Storm&) const = default;
};

template <MaybeConst<Storm> Self, class Visit>
void visit_fields(Self& self, Visit&& visit) {
  visit(Field{"rain", "24-hour rain", "depth of the design storm in 24 hours", Quantity::rain_depth, 0, 2},
        self.rain_m);
  visit(Field{"return-period", "return period", "only printed, the depth decides", Quantity::years, 1, 10000},
        self.return_period_years);
  visit(Field{"two-year-rain", "2-year rain", "2-year 24-hour depth, for sheet flow", Quantity::rain_depth, 0.001, 1},
        self.two_year_rain_m);
  visit(Field{"type", "storm type", "NRCS 24-hour rainfall distribution, or own: the table below"}, self.type);
  visit(
      Field{"distribution", "own distribution",
            "of a storm of type own: times, in hours where bare, each with the share of the rain fallen by then, as in "
            "0 0, 6 0.08, 12 0.66, 24 1"},
      self.own_curve);
  visit(Field{"table", "rain table",
              "years, each with the 24-hour depth that is reached or passed once in them on average, as in "
              "2 3.0in, 10 4.5in, 100 7.1in"},
        self.table);
  visit(Field{"yard-life", "yard life", "years over which chances are told", Quantity::ratio, 1, 200},
        self.yard_life_years);
  visit(Field{"cover", "cover", "of ground that no cover area tells of"}, self.cover);
  visit(Field{"soil", "soil group", "of ground that no cover area tells of"}, self.soil);
}

}  // namespace yardwright
