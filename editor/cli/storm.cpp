#include "geom/drain/storm/storm.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <memory>
#include <nlohmann/json.hpp>

#include "editor/cli/findings_print.hpp"
#include "editor/cli/site_at.hpp"
#include "editor/cli/storm_options.hpp"
#include "editor/cli/verb.hpp"
#include "geom/drain/storm/how_often.hpp"
#include "geom/drain/storm/storm_findings.hpp"
#include "geom/drain/storm/storm_tables.hpp"
#include "geom/drain/storm/storm_words.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/io/ground_file.hpp"
#include "geom/io/whole_file.hpp"
#include "geom/site/footprint.hpp"
#include "geom/units/text.hpp"

namespace yardwright::cli {

namespace {

using namespace drain::storm;
using Json = nlohmann::ordered_json;

struct StormWords {
  std::string file;
  std::optional<int> phase;
  AskedStorm asked;
  bool how_often = false;
  std::string hydrographs;
  std::string depth;
  bool all = false;
};

std::string name_of(const Site& site, ItemId id) {
  const Item* item = find(site, id);
  return item == nullptr ? std::to_string(id.number) : title_of(*item);
}

void print_story(const Site& site, const StormOptions& options, const StormStory& story) {
  const auto level = [&](double m) { return text_of(m, Quantity::length, site.units); };
  const auto volume = [&](double m3) { return text_of(m3, Quantity::volume, site.units); };
  fmt::print("{}\nhours {:.2f} to {:.2f} of the 24-hour storm; {}\n\n", site.name, story.start_s / 3600,
             story.end_s / 3600, mishap_words(site, options));
  fmt::print("{:<20}{:>12}{:>12}{:>18}{:>18}{:>14}{:>14}{:>14}\n", "pit", "rim", "highest", "over rim", "full", "in",
             "most at once", "pumped");
  for (const PitStory& pit : story.pits) {
    fmt::print("{:<20}{:>12}{:>12}{:>18}{:>18}{:>14}{:>14}{:>14}\n", name_of(site, pit.item), level(pit.rim_m),
               level(pit.highest_m), hour_words(pit.rim_s, story.end_s), hour_words(pit.overflows_s, story.end_s),
               volume(pit.in_m3), text_of(pit.highest_inflow_m3_per_s(), Quantity::flow, site.units),
               volume(pit.pumped_m3));
  }
  const auto print_pipe = [&](const PipeStory& pipe, const char* does) {
    fmt::print("{} {} up to {}{}\n", name_of(site, pipe.item), does,
               text_of(pipe.highest_m3_per_s, Quantity::flow, site.units),
               pipe.full_s > 0 ? fmt::format("; it is full for {:.2f} h", pipe.full_s / 3600) : "");
  };
  for (const PipeStory& culvert : story.culverts) print_pipe(culvert, "carries");
  for (const PipeStory& tile : story.tiles) print_pipe(tile, "carries");
  for (const PipeStory& grate : story.grates) print_pipe(grate, "takes in");
  for (const std::string& words : story.left_out) fmt::print("{}.\n", words);
  const WaterBalance& water = story.balance;
  fmt::print(
      "\nwater: {} stood and {} fell; {} soaked in, {} left, {} was pumped, {} stand on the ground and {} in pits\n",
      volume(water.stood_m3), volume(water.rain_m3), volume(water.soaked_m3), volume(water.left_m3),
      volume(water.pumped_m3), volume(water.on_ground_m3), volume(water.in_pits_m3));
  if (water.error_ratio() < 1e-9)
    fmt::print("all of it is accounted for\n");
  else
    fmt::print("not accounted for: {:.1e} of it\n", water.error_ratio());
}

Json story_json(const Site& site, const StormOptions& options, const StormStory& story) {
  const auto hours = [](std::optional<double> time_s) { return time_s ? Json(*time_s / 3600) : Json(nullptr); };
  Json out{{"site", site.name},
           {"start_h", story.start_s / 3600},
           {"end_h", story.end_s / 3600},
           {"mishap", names_of(options.mishap)[static_cast<std::size_t>(options.mishap)]},
           {"failed_pump", options.failed_pump ? Json(options.failed_pump.number) : Json(nullptr)},
           {"stopped", story.stopped},
           {"steps", story.steps},
           {"pits", Json::array()},
           {"walls", Json::array()}};
  for (const PitStory& pit : story.pits) {
    out["pits"].push_back({{"item", pit.item.number},
                           {"floor_m", pit.floor_m},
                           {"rim_m", pit.rim_m},
                           {"highest_m", pit.highest_m},
                           {"over_rim_h", hours(pit.rim_s)},
                           {"full_h", hours(pit.overflows_s)},
                           {"in_m3", pit.in_m3},
                           {"highest_inflow_m3_per_s", pit.highest_inflow_m3_per_s()},
                           {"pumped_m3", pit.pumped_m3}});
  }
  for (const auto& [key, pipes] :
       {std::pair{"culverts", &story.culverts}, {"tile_lines", &story.tiles}, {"grates", &story.grates}}) {
    out[key] = Json::array();
    for (const PipeStory& pipe : *pipes)
      out[key].push_back(
          {{"item", pipe.item.number}, {"highest_m3_per_s", pipe.highest_m3_per_s}, {"full_h", pipe.full_s / 3600}});
  }
  out["left_out"] = story.left_out;
  for (const WallStory& wall : story.walls)
    out["walls"].push_back({{"item", wall.item.number}, {"deepest_m", wall.deepest_m}, {"wet_h", wall.wet_s / 3600}});
  const WaterBalance& water = story.balance;
  out["water_m3"] = {{"stood", water.stood_m3},    {"rain", water.rain_m3},     {"soaked", water.soaked_m3},
                     {"left", water.left_m3},      {"pumped", water.pumped_m3}, {"on_ground", water.on_ground_m3},
                     {"in_pits", water.in_pits_m3}};
  out["error"] = water.error_ratio();
  return out;
}

Json how_often_json(const Frequencies& frequencies) {
  const auto years = [](std::optional<double> number) { return number ? Json(*number) : Json(nullptr); };
  Json out = Json::array();
  for (const HowOften& one : frequencies.all)
    out.push_back({{"finding", one.finding},
                   {"event", names_of(one.event)[static_cast<std::size_t>(one.event)]},
                   {"at_most_years", years(one.recurrence.at_most_years)},
                   {"at_least_years", years(one.recurrence.at_least_years)}});
  return out;
}

bool is_geotiff_name(const std::filesystem::path& file) {
  std::string ending = file.extension().string();
  std::ranges::transform(ending, ending.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return ending == ".tif" || ending == ".tiff";
}

/// Before minutes are spent: whether the files have a folder to be written into, and a name that says what they are.
Problems files_refused(const StormWords& words) {
  Problems problems;
  for (const auto& [option, name] : {std::pair{"--hydrographs", &words.hydrographs}, {"--depth", &words.depth}}) {
    const std::filesystem::path folder = std::filesystem::path{*name}.parent_path();
    std::error_code ignored;
    if (!name->empty() && !folder.empty() && !std::filesystem::is_directory(folder, ignored))
      problems.push_back({"there is no folder " + folder.string(), option, "make it, or name another"});
  }
  if (!words.depth.empty() && !is_geotiff_name(words.depth))
    problems.push_back({"the depths are written as a GeoTIFF, and " + words.depth + " is not named as one", "--depth",
                        "let the name end in .tif"});
  return problems;
}

tl::expected<void, Problems> write_files(const StormWords& words, const Site& site, const StormStory& story) {
  if (!words.hydrographs.empty()) {
    if (auto done = write_whole_file(words.hydrographs, hydrographs_csv(site, story)); !done) return done;
  }
  if (!words.depth.empty()) return save_level_grid(story.deepest_m, site.tie, words.depth);
  return {};
}

void run(const StormWords& words, Console& console) {
  const auto drawn = site_at(words.file, words.phase);
  if (!drawn) return refuse(drawn.error(), console);
  if (const Problems problems = files_refused(words); !problems.empty()) return refuse(problems, console);
  const auto site = with_asked_rain(*drawn, words.asked);
  if (!site) return refuse(site.error(), console);
  const auto options = storm_options(words.asked, *site);
  if (!options) return refuse(options.error(), console);
  if (words.how_often && !site->storm.table.known()) return refuse(no_rain_table().value(), console);
  const Catalogs& catalogs = shipped_catalogs();
  const auto story = run_storm(*site, design_surface(*site), catalogs, *options);
  if (!story) return refuse(story.error(), console);
  Findings findings = judge_storm(*site, *story, catalogs.rules.with(site->rule_overrides));
  Frequencies frequencies;
  if (words.how_often) {
    auto found = how_often(*site, design_surface(*site), catalogs, *options);
    if (!found) return refuse(found.error(), console);
    frequencies = std::move(*found);
    tell_how_often(findings, frequencies, site->storm.yard_life_years);
  }
  if (const auto written = write_files(words, *site, *story); !written) return refuse(written.error(), console);
  if (worst(findings) == Verdict::fail) console.exit_code = something_fails;
  if (console.json) {
    Json out = story_json(*site, *options, *story);
    out["findings"] = Json::array();
    for (const Finding& finding : findings) out["findings"].push_back(as_json(finding, site->units));
    if (words.how_often) out["how_often"] = how_often_json(frequencies);
    return write_json(out, 1);
  }
  print_story(*site, *options, *story);
  if (!findings.empty()) print_findings("storm", findings, site->units, words.all);
  print_caution();
}

}  // namespace

void add_storm_verb(CLI::App& program, Console& console) {
  auto words = std::make_shared<StormWords>();
  CLI::App* verb = program.add_subcommand("storm", "let the yard's storm run over it and into its pits, step by step");
  verb->footer(
      "example: yardwright storm NAME.yard --power-fails --hydrographs storm.csv --depth deepest.tif\n"
      "exit code: 0 nothing fails, 1 something fails, 2 bad input");
  verb->add_option("SITE", words->file, "the site file, NAME.yard")->required();
  verb->add_option("--phase", words->phase, "as the yard stands once this phase is built (0: today)");
  add_storm_options(*verb, words->asked);
  verb->add_flag("--how-often", words->how_often,
                 "run the storms of the site's rain table too, and tell how often each thing happens");
  verb->add_option("--hydrographs", words->hydrographs, "levels and flows over time as CSV into this file");
  verb->add_option("--depth", words->depth, "the deepest water of every cell as a GeoTIFF into this file");
  verb->add_flag("--all", words->all, "list what passes too");
  verb->callback([words, &console] { run(*words, console); });
}

}  // namespace yardwright::cli
