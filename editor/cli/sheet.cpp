#include <fmt/format.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "editor/cli/site_at.hpp"
#include "editor/cli/storm_options.hpp"
#include "geom/check/check.hpp"
#include "geom/drain/storm/storm_findings.hpp"
#include "geom/drain/storm/storm_words.hpp"
#include "geom/grow/grow.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/io/price_book.hpp"
#include "geom/sheet/plan_sheet.hpp"
#include "geom/sheet/sheet_file.hpp"
#include "geom/sheet/sheet_scale.hpp"
#include "geom/sheet/site_pictures.hpp"

namespace yardwright::cli {

namespace {

struct SheetWords {
  std::string site_file;
  std::string output = "plan.pdf";
  std::string paper = "tabloid";
  std::string scale;
  bool portrait = false;
  bool picture = false;
  bool storm = false;
  AskedStorm asked;
  std::optional<int> phase;
};

Expected<SheetOptions> options_of(const SheetWords& words) {
  SheetOptions options;
  const auto names = names_of(Paper{});
  const auto found = std::find(names.begin(), names.end(), words.paper);
  options.paper = static_cast<Paper>(found - names.begin());
  options.orientation = words.portrait ? Orientation::portrait : Orientation::landscape;
  if (words.scale.empty()) return options;
  const auto scale = parse_scale(words.scale);
  if (!scale) return tl::unexpected{Problems{scale.error()}};
  options.scale_ratio = *scale;
  return options;
}

/// A picture that cannot be read leaves its empty frame in the plan, and a note.
std::vector<PicturePixels> pictures_under(const Site& site, const SheetWords& words) {
  SitePictures read = read_site_pictures(site, words.site_file);
  for (const Problem& problem : read.problems)
    fmt::print(stderr, "yardwright: {} (its frame stands in the plan)\n", sentence(problem));
  return std::move(read.pictures);
}

Expected<std::shared_ptr<const StormSheet>> storm_over(const Site& site, const Answers& answers,
                                                       const AskedStorm& asked) {
  const auto options = storm_options(asked, site);
  if (!options) return tl::unexpected{options.error()};
  auto story = drain::storm::run_storm(site, answers.surface, shipped_catalogs(), *options);
  if (!story) return tl::unexpected{story.error()};
  Findings findings = drain::storm::judge_storm(site, *story, shipped_catalogs().rules.with(site.rule_overrides));
  return std::make_shared<const StormSheet>(
      StormSheet{std::move(*story), std::move(findings), drain::storm::mishap_words(site, *options)});
}

Expected<std::vector<Page>> pages_of(const Site& site, const std::vector<Item>& later, const SheetWords& words) {
  auto options = options_of(words);
  if (!options) return tl::unexpected{options.error()};
  options->pictures = pictures_under(site, words);
  auto prices = price_book_beside(words.site_file);
  if (!prices) return tl::unexpected{prices.error()};
  options->prices = *std::move(prices);
  options->built_phase = words.phase.value_or(options->built_phase);
  const Answers answers = check(site, shipped_catalogs());
  if (words.storm) {
    auto storm = storm_over(site, answers, words.asked);
    if (!storm) return tl::unexpected{storm.error()};
    options->storm = std::move(*storm);
  }
  if (words.picture) return std::vector{plan_picture(site, answers, shipped_catalogs(), std::move(options->pictures))};
  return plan_sheets(site, grow::with_growth(answers, site, shipped_catalogs(), later), shipped_catalogs(), *options);
}

void print(const std::vector<std::filesystem::path>& files, std::size_t pages, const Console& console) {
  if (console.json) {
    nlohmann::ordered_json out{{"pages", pages}, {"files", nlohmann::ordered_json::array()}};
    for (const auto& file : files) out["files"].push_back(file.string());
    write_json(out);
    return;
  }
  for (const auto& file : files) fmt::print("{}\n", file.string());
}

void make_sheets(const SheetWords& words, Console& console) {
  const auto asked = site_in_time(words.site_file, words.phase);
  if (!asked) return refuse(asked.error(), console);
  const Site& site = asked->site;
  const int last = static_cast<int>(site.phases.size()) - 1;
  const auto wet = with_asked_rain(words.phase ? site : as_of(site, last), words.asked);
  if (!wet) return refuse(wet.error(), console);
  const auto pages = pages_of(*wet, asked->later, words);
  if (!pages) return refuse(pages.error(), console);
  const auto files = write_pages(*pages, words.output, site.name);
  if (!files) return refuse(files.error(), console);
  print(*files, pages->size(), console);
}

}  // namespace

void add_sheet_verb(CLI::App& program, Console& console) {
  CLI::App* sheet = program.add_subcommand("sheet", "write the plan set: plan to scale, schedules, findings");
  sheet->footer(
      "example: yardwright sheet my.yard -o plan.pdf --paper tabloid\n"
      "sheets: the general plan, a plan of each question, schedules, every finding with its mend, cautions\n"
      "exit code: 0 the sheets are written, whatever they find; 2 bad input. To be told by the code: yardwright check");
  const auto words = std::make_shared<SheetWords>();
  sheet->add_option("SITE", words->site_file, "the site file, NAME.yard")->required();
  sheet->add_option("-o,--output", words->output, "plan.pdf, or .svg or .png for a file a page")->capture_default_str();
  const auto names = names_of(Paper{});
  sheet->add_option("--paper", words->paper, "size of the paper")
      ->check(CLI::IsMember(std::vector<std::string>(names.begin(), names.end())))
      ->capture_default_str();
  sheet->add_flag("--portrait", words->portrait, "the paper upright");
  sheet->add_option("--scale", words->scale,
                    "of the general plan, \"1in=40ft\" or 1:500; the largest standard scale that fits where not given");
  sheet->add_option("--phase", words->phase, "the yard once this phase is built; all phases where not given");
  CLI::Option* storm = sheet->add_flag("--storm", words->storm,
                                       "run the storm too: a plan of its deepest water and its tables; takes a while");
  add_storm_options(*sheet, words->asked, storm);
  sheet->add_flag("--picture", words->picture, "the plan alone");
  sheet->callback([words, &console] { make_sheets(*words, console); });
}

}  // namespace yardwright::cli
