// `yardwright compare`: several versions of one yard side by side, as lines, as JSON and as a page with their plans.
#include "geom/grow/compare.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <memory>
#include <nlohmann/json.hpp>

#include "editor/cli/findings_print.hpp"
#include "editor/cli/priced_site.hpp"
#include "editor/cli/quantity_json.hpp"
#include "editor/cli/site_at.hpp"
#include "editor/cli/verb.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/sheet/compare_page.hpp"
#include "geom/sheet/sheet_file.hpp"

namespace yardwright::cli {

namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t most_options = 6;  // more are not read side by side

struct CompareWords {
  std::vector<std::string> files;
  std::string prices, picture;
  std::optional<int> phase;
};

Expected<grow::Version> version_of(const std::string& file, std::optional<int> phase) {
  const auto asked = site_at(file, phase);  // a phase that it has not is refused
  if (!asked) return tl::unexpected{asked.error()};
  auto whole = site_at(file, std::nullopt);
  if (!whole) return tl::unexpected{whole.error()};
  const int last = static_cast<int>(whole->phases.size()) - 1;
  return grow::Version{std::filesystem::path{file}.stem().string(), *std::move(whole), phase.value_or(last)};
}

Expected<std::vector<grow::Version>> versions_of(const CompareWords& words) {
  if (words.files.size() < 2)
    return refused("there is but one yard", "compare", "give two files or more: A.yard B.yard");
  if (words.files.size() > most_options)
    return refused(fmt::format("{} yards are too many to be read side by side", words.files.size()), "compare",
                   fmt::format("give {} at most", most_options));
  std::vector<grow::Version> versions;
  Problems problems;
  for (const std::string& file : words.files) {
    auto version = version_of(file, words.phase);
    if (version)
      versions.push_back(*std::move(version));
    else
      problems.insert(problems.end(), version.error().begin(), version.error().end());
  }
  if (!problems.empty()) return tl::unexpected{problems};
  return versions;
}

Json standing_json(const grow::Standing& standing, UnitSystem units) {
  const Json nearest = standing.nearest ? as_json(*standing.nearest, units) : Json{};
  return {{"verdict", word(standing.worst)},     {"fail", standing.fails},  {"caution", standing.cautions},
          {"not_checked", standing.not_checked}, {"pass", standing.passes}, {"nearest", nearest}};
}

Json difference_json(const grow::Difference& difference) {
  return {{"how", names_of(difference.how)[static_cast<std::size_t>(difference.how)]},
          {"item", difference.item.number},
          {"words", difference.words}};
}

Json option_json(const grow::Option& option, UnitSystem units) {
  Json out{{"file", option.name}, {"site", option.site.name}, {"questions", Json::object()}};
  for (const grow::Standing& standing : option.standings)
    out["questions"][std::string{word(standing.question)}] = standing_json(standing, units);
  out["capacity"] = Json::array();
  for (const pace::GrainCapacity& one : option.answers.pace->capacity)
    out["capacity"].push_back(
        {{"grain", one.grain}, {"dry_m3", one.dry.as_cubic_metres()}, {"wet_m3", one.wet.as_cubic_metres()}});
  out["all"] = {{"lines", as_json(option.cost_of_all)},
                {"sum", option.cost_of_all.sum},
                {"without_price", option.cost_of_all.without_price}};
  out["built"] = {{"lines", as_json(option.cost_of_built)},
                  {"sum", option.cost_of_built.sum},
                  {"without_price", option.cost_of_built.without_price}};
  out["routes"] = Json::array();
  for (const turn::DrivenRoute& route : option.answers.turn->routes)
    out["routes"].push_back({{"item", route.route.number},
                             {"length_m", route.driven.stations_m.empty() ? 0 : route.driven.stations_m.back()}});
  out["differences"] = Json::array();
  for (const grow::Difference& difference : option.differences)
    out["differences"].push_back(difference_json(difference));
  return out;
}

void print_json(const grow::Comparison& comparison, const std::string& picture) {
  Json out{{"prices", as_json(comparison.book)}, {"options", Json::array()}};
  for (const grow::Option& option : comparison.options) out["options"].push_back(option_json(option, comparison.units));
  if (!picture.empty()) out["picture"] = picture;
  write_json(out, 1);
}

using Row = std::vector<std::string>;

/// Columns as wide as their widest cell.
void print_rows(const std::vector<Row>& rows) {
  std::vector<std::size_t> widths(rows.front().size(), 0);
  for (const Row& row : rows) {
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], row[i].size());
  }
  for (const Row& row : rows) {
    std::string line;
    for (std::size_t i = 0; i < row.size(); ++i) line += fmt::format("{:<{}}  ", row[i], widths[i]);
    fmt::print("{}\n", line.substr(0, line.find_last_not_of(' ') + 1));
  }
}

void print_differences(const grow::Comparison& comparison) {
  for (std::size_t i = 1; i < comparison.options.size(); ++i) {
    const grow::Option& option = comparison.options[i];
    fmt::print("\n{}, against {}:\n", option.name, comparison.options.front().name);
    if (option.differences.empty()) fmt::print("  no difference\n");
    for (const grow::Difference& difference : option.differences) fmt::print("  {}\n", difference.words);
  }
}

void print_text(const grow::Comparison& comparison) {
  std::vector<Row> rows{{""}};
  for (const grow::Option& option : comparison.options) rows.front().push_back(option.name);
  for (const grow::ComparedRow& one : grow::compared_rows(comparison, shipped_catalogs())) {
    rows.push_back({one.about});
    for (const grow::ComparedCell& cell : one.cells) rows.back().push_back(cell.words);
  }
  print_rows(rows);
  fmt::print("\nprices: {}\n", grow::book_words(comparison.book));
  print_differences(comparison);
  print_caution();
}

void run(const CompareWords& words, Console& console) {
  const auto versions = versions_of(words);
  if (!versions) return refuse(versions.error(), console);
  const auto book = prices_for(words.files.front(), words.prices);
  if (!book) return refuse(book.error(), console);
  const grow::Comparison comparison = grow::compare(*versions, *book, shipped_catalogs());
  if (!words.picture.empty()) {
    const auto files =
        write_pages({compare_page(comparison, shipped_catalogs())}, words.picture, "Options side by side");
    if (!files) return refuse(files.error(), console);
  }
  console.json ? print_json(comparison, words.picture) : print_text(comparison);
}

}  // namespace

void add_compare_verb(CLI::App& program, Console& console) {
  const auto words = std::make_shared<CompareWords>();
  CLI::App* verb = program.add_subcommand("compare", "several versions of one yard side by side");
  verb->footer(
      "example: yardwright compare as-it-is.yard two-more-bins.yard --picture options.pdf\n"
      "Items are told apart by their ids, as copies of one file keep them. Prices: see yardwright cost.\n"
      "exit code: 0 they are compared, whatever they find; 2 bad input. To be told by the code: yardwright check");
  verb->add_option("SITES", words->files, "two site files or more; the others are held against the first")->required();
  verb->add_option("--phase", words->phase, "each as it stands once this phase is built; its last where not given");
  verb->add_option("--prices", words->prices,
                   "a price book; else NAME.prices.json beside the first yard, else the shipped one");
  verb->add_option("--picture", words->picture, "their plans at one scale over the table: .pdf, .svg or .png");
  verb->callback([words, &console] { run(*words, console); });
}

}  // namespace yardwright::cli
