// `yardwright propose`: layouts by which a yard can grow, from a brief; each opens as a version of the yard.
#include <fmt/format.h>
#include <unistd.h>

#include <cstdio>
#include <filesystem>
#include <memory>
#include <nlohmann/json.hpp>

#include "editor/cli/findings_print.hpp"
#include "editor/cli/priced_site.hpp"
#include "editor/cli/quantity_json.hpp"
#include "editor/cli/stop_by_hand.hpp"
#include "editor/cli/verb.hpp"
#include "geom/grow/proposal_words.hpp"
#include "geom/io/brief_file.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/io/site_file.hpp"
#include "geom/site/finding_words.hpp"
#include "geom/units/text.hpp"

namespace yardwright::cli {

namespace {

using Json = nlohmann::ordered_json;
using namespace grow;

struct ProposeWords {
  std::string file, brief, wanted, grain, prices, out;
  std::vector<std::string> bins, legs;
  std::optional<double> budget, seconds;
  std::optional<int> outlets, most_bins;
  bool advice = false, force = false;
  std::uint64_t seed = 1;
  int tries = 1000;
  std::size_t most = 5;
};

/// Reads one option's text into the brief, or keeps what is wrong with it.
template <class Value>
void take(tl::expected<Value, Problem> read, const char* option, Problems& problems, auto put) {
  if (read) return put(*read);
  read.error().where = option;
  problems.push_back(read.error());
}

/// What is given by options takes the place of what the file has.
Expected<GrowthBrief> brief_of(const ProposeWords& words, UnitSystem units) {
  GrowthBrief brief;
  if (!words.brief.empty()) {
    auto read = load_growth_brief(words.brief, units);
    if (!read) return tl::unexpected{read.error()};
    brief = *std::move(read);
  }
  Problems problems;
  if (!words.wanted.empty())
    take(parse_quantity(words.wanted, Quantity::grain_volume, units), "--wanted", problems,
         [&](double m3) { brief.wanted_m3 = m3; });
  if (!words.bins.empty()) brief.bins.clear();
  for (const std::string& text : words.bins)
    take(parse_bin_size(text, units), "--bin", problems, [&](const BinSize& size) { brief.bins.push_back(size); });
  if (!words.legs.empty()) brief.discharge_m.clear();
  for (const std::string& text : words.legs)
    take(parse_leg_height(text, units), "--leg", problems, [&](double m) { brief.discharge_m.push_back(m); });
  if (!words.grain.empty()) brief.grain = words.grain;
  if (words.budget) brief.budget = words.budget;
  brief.outlets = words.outlets.value_or(brief.outlets);
  brief.most_bins = words.most_bins.value_or(brief.most_bins);
  brief.bears_advice |= words.advice;
  if (!problems.empty()) return tl::unexpected{problems};
  return brief;
}

std::string file_of(const ProposeWords& words, std::size_t number) {
  const std::string stem = std::filesystem::path{words.file}.stem().string();
  return (std::filesystem::path{words.out} / fmt::format("{}-proposal-{}.yard", stem, number)).string();
}

/// Known before the search, which takes a while.
Problems faults_of_out(const ProposeWords& words) {
  std::error_code none;
  if (words.out.empty()) return {};
  if (!std::filesystem::is_directory(words.out, none))
    return {{"is no folder", words.out, "make it first, or name another"}};
  for (std::size_t i = 1; i <= words.most && !words.force; ++i) {
    if (std::filesystem::exists(file_of(words, i), none))
      return {{"is there already", file_of(words, i), "name another folder, or give --force to replace it"}};
  }
  return {};
}

/// One line that is written over, where someone is looking.
void show_progress(const SearchProgress& progress, const GrowthTask& task) {
  std::string line = fmt::format("free ground {:.0f}%", 100 * progress.ground_ratio);
  if (progress.tried > 0)
    line = fmt::format("{} tried, {} pass; the most {}", progress.tried, progress.held,
                       text_of(progress.most_stored_m3, Quantity::grain_volume, task.site.units));
  if (progress.least_cost)
    line += fmt::format("; all that is wanted from {} {}", number_text(*progress.least_cost, 0), task.book.currency);
  fmt::print(stderr, "\r{:<78}", line);
  std::fflush(stderr);
}

Proposals sought(const ProposeWords& words, const GrowthTask& task) {
  const StopByHand stop{words.seconds};
  ProposalEffort effort{{words.seed, words.tries, stop.token(), {}}, words.most};
  const bool is_watched = isatty(STDERR_FILENO) != 0;
  if (is_watched) effort.search.told = [&](const SearchProgress& progress) { show_progress(progress, task); };
  Proposals found = propose(task, effort);
  if (is_watched) fmt::print(stderr, "\r{:<78}\r", "");
  return found;
}

Expected<std::vector<std::string>> written(const ProposeWords& words, const GrowthTask& task, const Proposals& found) {
  std::vector<std::string> files;
  for (std::size_t i = 0; i < found.list.size() && !words.out.empty(); ++i) {
    files.push_back(file_of(words, i + 1));
    const auto saved = save_site(yardwright::apply(task.whole, found.list[i].edits), files.back());
    if (!saved) return tl::unexpected{saved.error()};
  }
  return files;
}

Json brief_json(const GrowthTask& task) {
  const GrowthBrief& brief = task.brief;
  Json out{{"wanted_m3", brief.wanted_m3}, {"grain", task.model.grain}, {"bins", Json::array()}};
  for (const BinSize& size : brief.bins)
    out["bins"].push_back({{"diameter_m", size.diameter_m}, {"eave_m", size.eave_height_m}});
  out["leg_heights_m"] = brief.discharge_m;
  out["budget"] = brief.budget ? Json(*brief.budget) : Json{};
  out["advice"] = brief.bears_advice;
  return out;
}

Json proposal_json(const Proposal& one, const GrowthTask& task) {
  const LayoutMeasures& measures = one.measures;
  Json out{{"name", one.name},
           {"meets", one.meets},
           {"stored_m3", measures.stored_m3},
           {"cost", measures.cost},
           {"without_price", measures.without_price},
           {"safety", measures.safety_ratio},
           {"raised_m", measures.raised_m},
           {"spouts_m", measures.spouts_m},
           {"legs", Json::array()},
           {"bins", Json::array()},
           {"not_checked", Json::array()}};
  for (std::size_t i = 0; i < task.legs.size(); ++i)
    out["legs"].push_back({{"item", task.legs[i].id.number}, {"discharge_m", one.layout.discharge_m[i]}});
  for (const Stand& stand : one.layout.stands)
    out["bins"].push_back({{"diameter_m", task.brief.bins[stand.size].diameter_m},
                           {"eave_m", task.brief.bins[stand.size].eave_height_m},
                           {"at", {{"east_m", stand.at.x}, {"north_m", stand.at.y}}}});
  for (const Finding& finding : one.not_checked) out["not_checked"].push_back(as_json(finding, task.site.units));
  return out;
}

void print_json(const GrowthTask& task, const Proposals& found, const std::vector<std::string>& files) {
  const SearchProgress& progress = found.progress;
  Json out{{"site", task.site.name}, {"brief", brief_json(task)}, {"prices", as_json(task.book)}};
  out["search"] = {{"tried", progress.tried}, {"passed", progress.held}, {"kept", progress.kept}};
  out["proposals"] = Json::array();
  for (std::size_t i = 0; i < found.list.size(); ++i) {
    out["proposals"].push_back(proposal_json(found.list[i], task));
    if (i < files.size()) out["proposals"].back()["file"] = files[i];
  }
  out["why_none"] = found.why_none;
  write_json(out, 1);
}

void print_proposal(const Proposal& one, const GrowthTask& task) {
  const UnitSystem units = task.site.units;
  fmt::print("\n{}: {} more for {}{}\n", one.name, text_of(one.measures.stored_m3, Quantity::grain_volume, units),
             cost_words(task, one.measures), one.meets ? "" : "; " + short_words(task, one));
  fmt::print("  {}; {}\n", bins_words(task, one.layout), leg_words(task, one.layout));
  fmt::print("  {} of spouts; least margin {}\n", text_of(one.measures.spouts_m, Quantity::length, units),
             safety_words(one.measures));
  for (const Stand& stand : one.layout.stands) {
    fmt::print("  {:<18} {} east, {} north\n", bin_size_words(task.brief.bins[stand.size], units),
               text_of(stand.at.x, Quantity::length, units), text_of(stand.at.y, Quantity::length, units));
  }
  for (const Finding& finding : one.not_checked) {
    if (!finding.items.empty()) fmt::print("  not checked: {}; {}\n", headline(finding), finding.note);
  }
}

/// What no check of the yard tells, and so none of a proposal.
void print_not_checked(const Proposals& found) {
  if (found.list.empty()) return;
  fmt::print("\n");
  for (const Finding& finding : found.list.front().not_checked) {
    if (finding.items.empty()) fmt::print("not checked: {}; {}\n", headline(finding), finding.note);
  }
}

void print_text(const GrowthTask& task, const Proposals& found, const std::vector<std::string>& files) {
  fmt::print("{}: {}\n{} layouts tried, {} pass\n", task.site.name, brief_words(task), found.progress.tried,
             found.progress.held);
  for (const Proposal& one : found.list) print_proposal(one, task);
  if (found.list.empty()) fmt::print("\nno proposal: {}\n", found.why_none);
  print_not_checked(found);
  fmt::print("\nprices: {}\n", book_words(task.book));
  for (const std::string& file : files) fmt::print("written: {}\n", file);
  print_caution();
}

void run(const ProposeWords& words, Console& console) {
  auto whole = load_site(words.file);
  if (!whole) return refuse(whole.error(), console);
  const auto brief = brief_of(words, whole->units);
  if (!brief) return refuse(brief.error(), console);
  const auto book = prices_for(words.file, words.prices);
  if (!book) return refuse(book.error(), console);
  if (const Problems faults = faults_of_out(words); !faults.empty()) return refuse(faults, console);
  const GrowthTask task{*std::move(whole), *brief, *book, shipped_catalogs()};
  if (const Problems faults = faults_of(task); !faults.empty()) return refuse(faults, console);
  const Proposals found = sought(words, task);
  const auto files = written(words, task, found);
  if (!files) return refuse(files.error(), console);
  console.json ? print_json(task, found, *files) : print_text(task, found, *files);
  if (found.list.empty()) console.exit_code = something_fails;
}

void add_brief_options(CLI::App& verb, ProposeWords& words) {
  verb.add_option("--brief", words.brief, "a file with what is wanted; options take the place of what it has");
  verb.add_option("--wanted", words.wanted, "dry storage more, heaped and packed: 40000bu");
  verb.add_option("--grain", words.grain, "that the new bins hold; else that of the bin placed last");
  verb.add_option("--bin", words.bins,
                  "a size that may be built, diameter and eave height: \"36ft x 24ft\"; again for more");
  verb.add_option("--leg", words.legs, "a discharge height to which a leg may be raised: 120ft; again for more");
  verb.add_option("--outlets", words.outlets, "of the distributor on a leg that is raised; 24 where not given")
      ->check(CLI::Range(1, 24));
  verb.add_option("--most-bins", words.most_bins, "in a proposal; 12 where not given")
      ->check(CLI::Range(1, most_bins_of_brief));
  verb.add_option("--budget", words.budget, "in the currency of the price book")->check(CLI::Range(0.0, 1e12));
  verb.add_flag("--advice", words.advice, "cautions are borne: nothing more may fail");
}

}  // namespace

void add_propose_verb(CLI::App& program, Console& console) {
  const auto words = std::make_shared<ProposeWords>();
  CLI::App* verb = program.add_subcommand("propose", "layouts by which the yard can grow: places, sizes, leg heights");
  verb->footer(
      "example: yardwright propose NAME.yard --wanted 60000bu --bin \"36ft x 24ft\" --bin \"48ft x 29ft\" --leg 120ft "
      "-o .\n"
      "What stands is kept but for legs that are raised; each proposal breaks nothing that was in order, asked "
      "afresh.\n"
      "Ctrl-C ends the search with what was found so far. The same seed and tries propose the same.\n"
      "exit code: 0 there are proposals, 1 there are none, 2 bad input");
  verb->add_option("SITE", words->file, "the site file, NAME.yard")->required();
  add_brief_options(*verb, *words);
  verb->add_option("--prices", words->prices,
                   "a price book; else NAME.prices.json beside the yard, else the shipped one");
  verb->add_option("--seed", words->seed, "of the search");
  verb->add_option("--tries", words->tries, "layouts that are tried; 1000 where not given")
      ->check(CLI::Range(1, 1'000'000));
  verb->add_option("--seconds", words->seconds, "the search ends after so long")->check(CLI::Range(0.0, 1e6));
  verb->add_option("--proposals", words->most, "how many at most; 5 where not given")->check(CLI::Range(1, 20));
  verb->add_option("-o,--out", words->out, "write each as NAME-proposal-1.yard into this folder, for compare to read");
  verb->add_flag("--force", words->force, "replace proposals that are there already");
  verb->callback([words, &console] { run(*words, console); });
}

}  // namespace yardwright::cli
