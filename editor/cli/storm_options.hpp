// What is asked of a storm on the command line, the same for every verb that lets one run.
#pragma once

#include "editor/cli/verb.hpp"
#include "geom/drain/storm/storm.hpp"

namespace yardwright::cli {

inline constexpr double heaviest_span = -1e9;  ///< a start that is none

struct AskedStorm {
  std::optional<double> years;  ///< of the rain table; the yard's own storm where not given
  double start_s = heaviest_span;
  double length_s = 3 * 3600;
  std::string failed_pump;
  bool power_fails = false;
  bool half_blocked = false;
  bool tiles_full = false;
};

/// --return-period, --start, --length and what goes wrong; only together with `needed`, where it is given.
void add_storm_options(CLI::App& verb, AskedStorm& asked, CLI::Option* needed = nullptr);

/// No frames. Refused where a time is not within the storm or no such pump is there.
Expected<drain::storm::StormOptions> storm_options(const AskedStorm& asked, const Site& site);

/// The yard with the rain of the asked years, from its own rain table.
Expected<Site> with_asked_rain(Site site, const AskedStorm& asked);

/// The depth in a table's row of so many years, or what rows there are.
Expected<double> asked_rain(const RainTable& table, double years);

}  // namespace yardwright::cli
