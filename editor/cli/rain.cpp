// `yardwright rain`: gives a yard the rain table of its place, and the design storm of a return period from it.
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <memory>
#include <nlohmann/json.hpp>

#include "editor/cli/storm_options.hpp"
#include "geom/drain/recurrence.hpp"
#include "geom/io/rain_table_file.hpp"
#include "geom/io/site_file.hpp"
#include "geom/site/edit.hpp"
#include "geom/site/rain_years.hpp"
#include "geom/units/text.hpp"

namespace yardwright::cli {

namespace {

struct AskedRain {
  std::filesystem::path site;
  std::filesystem::path from;
  std::string table;
  std::optional<double> years;
};

/// As asked for; without asking the yard's own.
Expected<RainTable> table_of(const AskedRain& asked, const Site& site) {
  if (!asked.from.empty()) return read_rain_table(asked.from);
  if (asked.table.empty() && site.storm.table.known()) return site.storm.table;
  if (asked.table.empty())
    return refused("the yard has no rain table", "rain", "name a file with --from, or type one with --table");
  auto typed = parse_rain_table(asked.table, site.units);
  if (typed && typed->known()) return std::move(*typed);
  return tl::unexpected{Problems{typed ? Problem{"it has no rows", "--table", "write years and depths"}
                                       : Problem{typed.error().what, "--table", typed.error().mend}}};
}

Expected<Storm> storm_with(Storm storm, RainTable table, std::optional<double> years) {
  if (years) {
    const auto rain_m = asked_rain(table, *years);
    if (!rain_m) return tl::unexpected{rain_m.error()};
    storm.return_period_years = *years;
  }
  return with_rain_table(std::move(storm), std::move(table));
}

std::string chance_words(double ratio) { return ratio < 0.995 ? fmt::format("{:.0f} %", 100 * ratio) : "over 99 %"; }

void print_storm(const Storm& storm, UnitSystem units, const Console& console) {
  if (console.json) {
    nlohmann::ordered_json rows = nlohmann::ordered_json::array();
    for (const RainOfYears& row : storm.table.rows)
      rows.push_back({{"years", row.years},
                      {"rain_m", row.rain_m},
                      {"chance_over_yard_life", drain::chance_ratio(row.years, storm.yard_life_years)}});
    return write_json({{"table", rows}, {"return_period_years", storm.return_period_years}, {"rain_m", storm.rain_m}});
  }
  fmt::print("{:>8}{:>14}{:>26}\n", "years", "24-hour rain",
             fmt::format("chance in {:g} years", storm.yard_life_years));
  for (const RainOfYears& row : storm.table.rows)
    fmt::print("{:>8g}{:>14}{:>26}\n", row.years, text_of(row.rain_m, Quantity::rain_depth, units),
               chance_words(drain::chance_ratio(row.years, storm.yard_life_years)));
  fmt::print("design storm: {} in 24 hours, {:g} years\n", text_of(storm.rain_m, Quantity::rain_depth, units),
             storm.return_period_years);
}

void give_rain(const AskedRain& asked, Console& console) {
  const auto site = load_site(asked.site);
  if (!site) return refuse(site.error(), console);
  auto table = table_of(asked, *site);
  if (!table) return refuse(table.error(), console);
  const auto storm = storm_with(site->storm, std::move(*table), asked.years);
  if (!storm) return refuse(storm.error(), console);
  if (const auto saved = save_site(apply(*site, SetStorm{*storm}), asked.site); !saved)
    return refuse(saved.error(), console);
  print_storm(*storm, site->units, console);
}

}  // namespace

void add_rain_verb(CLI::App& program, Console& console) {
  const auto asked = std::make_shared<AskedRain>();
  CLI::App* verb = program.add_subcommand("rain", "give a yard the rain table of its place, and its design storm");
  verb->footer(
      "example: yardwright rain NAME.yard --from atlas14.csv --return-period 25\n"
      "         yardwright rain NAME.yard shows the table that it has\n"
      "Depths of 24 hours, once in so many years on average; a point's text export of NOAA Atlas 14 is read as it is.");
  verb->add_option("SITE", asked->site, "the site file, NAME.yard")->required();
  CLI::Option* from = verb->add_option("--from", asked->from, "a text export of NOAA Atlas 14");
  CLI::Option* table = verb->add_option("--table", asked->table, "years and depths: \"2 3.0in, 10 4.5in, 100 7.1in\"");
  from->excludes(table);
  verb->add_option("--return-period", asked->years, "years of the design storm; a row of the table");
  verb->callback([asked, &console] { give_rain(*asked, console); });
}

}  // namespace yardwright::cli
