// `yardwright mend`: for every finding that fails or wants caution the least change that mends it and breaks nothing else, asked of
// the whole yard; and that of one finding done to the file.
#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <nlohmann/json.hpp>

#include "editor/cli/findings_print.hpp"
#include "editor/cli/site_at.hpp"
#include "editor/cli/verb.hpp"
#include "geom/grow/least_change.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/io/site_file.hpp"
#include "geom/site/finding_words.hpp"

namespace yardwright::cli {

namespace {

using Json = nlohmann::ordered_json;
using grow::Change;

constexpr std::size_t most_harmful_told = 2;

struct MendWords {
  std::string file;
  std::optional<int> phase;
  std::string finding;
  bool apply = false;
};

struct Asked {
  Finding finding;
  grow::Found found;
};

/// What is asked about: the finding of that name, or all that want a change.
Expected<Findings> chosen(const Findings& all, const std::string& id, const std::string& file) {
  Findings some;
  std::ranges::copy_if(all, std::back_inserter(some),
                       [&](const Finding& one) { return grow::wants_change(one) && (id.empty() || one.id == id); });
  if (!some.empty() || id.empty()) return some;
  if (id.starts_with("grow."))
    return refused("room to grow is not mended", "--finding", "yardwright grow " + file + " tells of it");
  const bool is_told = std::ranges::find(all, id, &Finding::id) != all.end();
  const std::string quoted = "\"" + id + "\"";
  return refused(is_told ? quoted + " neither fails nor wants caution" : "there is no finding " + quoted, "--finding",
                 "yardwright mend " + file + " lists those that do, each with its name in brackets");
}

Json change_as_json(const Change& change, UnitSystem units) {
  Json out{{"words", change_words(change, units)}, {"proven", change.is_proven()}, {"effort_m", change.effort_m}};
  out["mends"] = Json::array();
  for (const Mend& mend : change.mends) out["mends"].push_back(as_json(mend, units));
  out["breaks"] = Json::array();
  for (const Finding& finding : change.breaks) out["breaks"].push_back(finding.id);
  return out;
}

void print_json(const Site& site, const std::vector<Asked>& asked, bool applied) {
  Json out{{"site", site.name}, {"applied", applied}, {"changes", Json::array()}};
  for (const auto& [finding, found] : asked) {
    Json one{{"finding", finding.id}, {"verdict", word(finding.verdict)}, {"title", headline(finding)}};
    one["least"] = found.least ? change_as_json(*found.least, site.units) : Json{};
    one["harmful"] = Json::array();
    for (const Change& change : found.harmful) one["harmful"].push_back(change_as_json(change, site.units));
    out["changes"].push_back(std::move(one));
  }
  write_json(out, 1);
}

std::string breaks_words(const Change& change) {
  const std::size_t others = change.breaks.size() - 1;
  return headline(change.breaks.front()) +
         (others == 0 ? "" : fmt::format(", and {} {} more", others, others == 1 ? "thing" : "things"));
}

/// Of the harmful ones those that would be less, for whoever can live with what they break.
void print_one(const Asked& asked, UnitSystem units) {
  const auto& [finding, found] = asked;
  fmt::print("\n{:<11} {}; {} [{}]\n", word(finding.verdict), headline(finding), measured_words(finding, units),
             finding.id);
  if (found.least)
    fmt::print("  {:<9} {}; proven: every question asked again, nothing else is worse\n", "least",
               change_words(*found.least, units));
  else
    fmt::print("  {:<9} no change of one thing or of two was found that breaks nothing else\n", "least");
  std::size_t told = 0;
  for (const Change& change : found.harmful) {
    if ((found.least && change.effort_m > found.least->effort_m) || ++told > most_harmful_told) continue;
    fmt::print("  {:<9} {}: {}\n", "breaks", change_words(change, units), breaks_words(change));
  }
}

void print_text(const Site& site, const std::vector<Asked>& asked, const MendWords& words, bool applied) {
  fmt::print("{}\n", site.name);
  for (const Asked& one : asked) print_one(one, site.units);
  if (asked.empty()) fmt::print("\nnothing fails and nothing wants caution\n");
  if (applied) fmt::print("\ndone to {}\n", words.file);
  print_caution();
}

/// What is new to the yard of a phase may have the number of a thing of a later one.
Edits renumbered(Edits edits, const Site& asked, const Site& whole) {
  const int further = next_id(whole).number - next_id(asked).number;
  for (Edit& edit : edits) {
    PutItem* put = std::get_if<PutItem>(&edit);
    if (put != nullptr && find(asked, put->item.id) == nullptr) put->item.id.number += further;
  }
  return edits;
}

/// Seeking takes a while: a file that someone else saved meanwhile is another yard, of which nothing is proven.
tl::expected<void, Problems> save_with(const Change& change, const Site& asked, const MendWords& words) {
  const auto whole = load_site(words.file), now = site_at(words.file, words.phase);
  if (!whole) return tl::unexpected{whole.error()};
  if (!now || *now != asked)
    return tl::unexpected{Problems{{"the file has changed since it was asked about", words.file, "mend it again"}}};
  return save_site(yardwright::apply(*whole, renumbered(change.edits(), asked, *whole)), words.file);
}

void run(const MendWords& words, Console& console) {
  const auto site = site_at(words.file, words.phase);
  if (!site) return refuse(site.error(), console);
  const Answers answers = check(*site, shipped_catalogs());
  const auto findings = chosen(all_findings(answers), words.finding, words.file);
  if (!findings) return refuse(findings.error(), console);
  grow::LeastChanges changes{*site, answers, shipped_catalogs()};
  std::vector<Asked> asked;
  for (const Finding& finding : *findings) asked.push_back({finding, changes.of(finding)});
  const bool applied = words.apply && asked.front().found.least;
  if (applied) {
    if (const auto saved = save_with(*asked.front().found.least, *site, words); !saved)
      return refuse(saved.error(), console);
  }
  if (console.json)
    print_json(*site, asked, applied);
  else
    print_text(*site, asked, words, applied);
  if (std::ranges::any_of(asked, [](const Asked& one) { return !one.found.least; }))
    console.exit_code = something_fails;
}

}  // namespace

void add_mend_verb(CLI::App& program, Console& console) {
  const auto words = std::make_shared<MendWords>();
  CLI::App* verb = program.add_subcommand("mend", "the least change for what fails, proven by every question");
  verb->footer(
      "example: yardwright mend NAME.yard --finding reach.slope-dry:5 --apply\n"
      "exit code: 0 each has a change that breaks nothing else, 1 some have none, 2 bad input");
  verb->add_option("SITE", words->file, "the site file, NAME.yard")->required();
  verb->add_option("--phase", words->phase, "as the yard stands once this phase is built (0: today)");
  CLI::Option* finding = verb->add_option("--finding", words->finding, "of this finding alone: \"reach.slope-dry:5\"");
  verb->add_flag("--apply", words->apply, "do it to the file")->needs(finding);
  verb->callback([words, &console] { run(*words, console); });
}

}  // namespace yardwright::cli
