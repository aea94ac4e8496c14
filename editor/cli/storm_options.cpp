#include "editor/cli/storm_options.hpp"

#include <fmt/format.h>

#include "geom/drain/storm/rainfall.hpp"
#include "geom/site/footprint.hpp"
#include "geom/site/rain_years.hpp"
#include "geom/units/text.hpp"

namespace yardwright::cli {

using namespace drain::storm;

namespace {

/// An item by its name or its number, that has a pump.
Expected<ItemId> pump_called(const Site& site, const std::string& words) {
  for (const Item& item : site.items) {
    const PitBody* body = pit_body(item.thing);
    if (body == nullptr || (title_of(item) != words && std::to_string(item.id.number) != words)) continue;
    if (body->pump_m3_per_s > 0) return item.id;
    return refused(title_of(item) + " has no pump that could fail", "--pump-fails",
                   "give it a pump, or leave this out");
  }
  return refused("no pit is called \"" + words + "\"", "--pump-fails", "give the name or number of an item with a pit");
}

std::string years_of(const RainTable& table) {
  std::string words;
  for (const RainOfYears& row : table.rows) words += fmt::format("{}{:g}", words.empty() ? "" : ", ", row.years);
  return words;
}

}  // namespace

Expected<StormOptions> storm_options(const AskedStorm& asked, const Site& site) {
  StormOptions options;
  options.length_s = asked.length_s;
  options.frame_every_s = 0;
  if (asked.start_s != heaviest_span) options.start_s = asked.start_s;
  if (!(asked.length_s >= 60 && asked.length_s <= storm_length_s))
    return refused("a storm of " + text_of(asked.length_s, Quantity::duration, site.units) + " cannot be run",
                   "--length", "give 1 min to 24 h");
  if (options.start_s && (*options.start_s < 0 || *options.start_s >= storm_length_s))
    return refused(*options.start_s < 0 ? "the storm has not begun by then" : "the storm is over by then", "--start",
                   "give 0 to 24 h");
  if (asked.power_fails) options.mishap = Mishap::power_fails;
  if (asked.half_blocked) options.mishap = Mishap::inlets_half_blocked;
  if (asked.tiles_full) options.mishap = Mishap::tiles_full;
  if (!asked.failed_pump.empty()) {
    const auto pump = pump_called(site, asked.failed_pump);
    if (!pump) return tl::unexpected{pump.error()};
    options.mishap = Mishap::pump_fails;
    options.failed_pump = *pump;
  }
  return options;
}

Expected<double> asked_rain(const RainTable& table, double years) {
  if (const auto rain_m = rain_of_years(table, years)) return *rain_m;
  if (!table.known())
    return refused("the yard has no rain table", "--return-period", "give it one with yardwright rain");
  return refused(fmt::format("the table has no row of {:g} years", years), "--return-period",
                 "give one of " + years_of(table));
}

Expected<Site> with_asked_rain(Site site, const AskedStorm& asked) {
  if (!asked.years) return site;
  const auto rain_m = asked_rain(site.storm.table, *asked.years);
  if (!rain_m) return tl::unexpected{rain_m.error()};
  site.storm.return_period_years = *asked.years;
  site.storm.rain_m = *rain_m;
  return site;
}

void add_storm_options(CLI::App& verb, AskedStorm& asked, CLI::Option* needed) {
  CLI::Option* years = verb.add_option("--return-period", asked.years,
                                       "the rain of so many years, a row of the yard's rain table; its own storm where "
                                       "not given");
  CLI::Option* start = add_quantity(verb, "--start", asked.start_s, Quantity::duration,
                                    "from this time of the 24-hour storm on; where not given, its heaviest part");
  CLI::Option* length =
      add_quantity(verb, "--length", asked.length_s, Quantity::duration, "for so long (3 h where not given)");
  CLI::Option* pump = verb.add_option("--pump-fails", asked.failed_pump, "name or number of the item whose pump fails");
  CLI::Option* power = verb.add_flag("--power-fails", asked.power_fails, "every pump stands still");
  CLI::Option* blocked =
      verb.add_flag("--inlets-half-blocked", asked.half_blocked, "culverts and grates take in half of what they could");
  CLI::Option* full = verb.add_flag("--tiles-full", asked.tiles_full, "tile lines take nothing");
  power->excludes(pump)->excludes(blocked)->excludes(full);
  pump->excludes(blocked)->excludes(full);
  blocked->excludes(full);
  if (needed == nullptr) return;
  for (CLI::Option* option : {years, start, length, pump, power, blocked, full}) option->needs(needed);
}

}  // namespace yardwright::cli
