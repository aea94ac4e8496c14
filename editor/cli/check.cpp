#include "geom/check/check.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <memory>
#include <nlohmann/json.hpp>
#include <optional>

#include "editor/cli/site_at.hpp"
#include "editor/cli/verb.hpp"
#include "geom/drain/pit_words.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/site/finding_words.hpp"
#include "geom/units/text.hpp"

namespace yardwright::cli {

namespace {

using Json = nlohmann::ordered_json;

struct CheckWords {
  std::string file;
  std::optional<int> phase;
  bool all = false;
};

std::string_view word(Question question) { return names_of(question)[static_cast<std::size_t>(question)]; }
std::string_view word(Verdict verdict) { return names_of(verdict)[static_cast<std::size_t>(verdict)]; }

Json as_json(const Mend& mend, UnitSystem units) {
  Json out{{"action", mend.action}, {"words", mend_words(mend, units)}};
  if (mend.change == 0) return out;
  out["change"] = mend.change;
  out["becomes"] = mend.becomes;
  out["unit"] = units_of(mend.quantity).front().suffix;
  return out;
}

Json as_json(const Finding& finding, UnitSystem units) {
  Json out{{"id", finding.id},
           {"question", word(finding.question)},
           {"rule", finding.rule},
           {"verdict", word(finding.verdict)},
           {"title", headline(finding)}};
  if (finding.verdict != Verdict::not_checked) {
    out["measured"] = finding.measured;
    out["required"] = finding.required;
    out["bound"] = names_of(finding.bound)[static_cast<std::size_t>(finding.bound)];
    out["margin"] = finding.margin;
    out["unit"] = units_of(finding.quantity).front().suffix;
  }
  out["note"] = finding.note;
  out["items"] = Json::array();
  for (const ItemId id : finding.items) out["items"].push_back(id.number);
  out["basis"] = names_of(finding.basis)[static_cast<std::size_t>(finding.basis)];
  out["source"] = finding.source;
  out["mends"] = Json::array();
  for (const Mend& mend : finding.mends) out["mends"].push_back(as_json(mend, units));
  return out;
}

/// SI; what is not known is null.
Json pits_as_json(const drain::Answer& answer) {
  Json pits = Json::array();
  for (const drain::PitWater& pit : answer.pits) {
    Json out{{"item", pit.item.number},           {"catchment_m2", pit.catchment_m2},
             {"curve_number", pit.curve_number},  {"concentration_s", pit.concentration.total_s()},
             {"runoff_m3", pit.runoff_m3},        {"graphical_peak_m3_per_s", nullptr},
             {"rational_peak_m3_per_s", nullptr}, {"hydrograph_peak_m3_per_s", nullptr},
             {"hydrograph_peak_at_s", nullptr}};
    if (pit.peak.state == drain::PeakState::computed) out["graphical_peak_m3_per_s"] = pit.peak.peak_m3_per_s;
    if (pit.rational_peak_m3_per_s) out["rational_peak_m3_per_s"] = *pit.rational_peak_m3_per_s;
    if (pit.routed_peak) out["hydrograph_peak_m3_per_s"] = pit.routed_peak->flow_m3_per_s;
    if (pit.routed_peak) out["hydrograph_peak_at_s"] = pit.routed_peak->at_s;
    pits.push_back(std::move(out));
  }
  return pits;
}

void print_json(const Site& site, const std::vector<Question>& questions, const Answers& answers) {
  Json out{{"site", site.name}, {"verdicts", Json::object()}, {"findings", Json::array()}};
  for (const Question question : questions) {
    const Findings& findings = findings_of(answers, question);
    out["verdicts"][std::string{word(question)}] = word(worst(findings));
    for (const Finding& finding : findings) out["findings"].push_back(as_json(finding, site.units));
  }
  if (std::ranges::find(questions, Question::drain) != questions.end()) out["pits"] = pits_as_json(*answers.drain);
  write_json(out, 1);
}

void print_pits(const Site& site, const drain::Answer& answer) {
  for (const drain::PitWater& pit : answer.pits) {
    const Item* item = find(site, pit.item);
    fmt::print("  {:<11} {} gets the rain of {}: {}\n", "water", item ? title_of(*item) : "the pit",
               text_of(pit.catchment_m2, Quantity::area, site.units),
               fmt::join(drain::runoff_words(pit, site.units), "; "));
  }
}

void print_finding(const Finding& finding, UnitSystem units) {
  fmt::print("  {:<11} {}\n", word(finding.verdict), sentence(finding, units));
  if (finding.verdict != Verdict::pass) fmt::print("  {:<11} {} [{}]\n", "", basis_words(finding), finding.id);
}

void print_text(const Site& site, const std::vector<Question>& questions, const Answers& answers, bool all) {
  fmt::print("{}\n", site.name);
  for (const Question question : questions) {
    const Findings& findings = findings_of(answers, question);
    fmt::print("\n{}: {}\n", word(question), word(worst(findings)));
    std::size_t passed = 0;
    for (const Finding& finding : findings) {
      if (finding.verdict == Verdict::pass && !all)
        ++passed;
      else
        print_finding(finding, site.units);
    }
    if (question == Question::drain) print_pits(site, *answers.drain);
    if (passed > 0) fmt::print("  {:<11} {} more (--all lists them)\n", "pass", passed);
  }
  fmt::print("\nA planning aid. Local code, the utility and licensed practice decide.\n");
}

void run(const CheckWords& words, const std::vector<Question>& questions, Console& console) {
  const auto site = site_at(words.file, words.phase);
  if (!site) return refuse(site.error(), console);
  const Answers answers = check(*site, shipped_catalogs());
  if (console.json)
    print_json(*site, questions, answers);
  else
    print_text(*site, questions, answers, words.all);
  for (const Question question : questions) {
    if (worst(findings_of(answers, question)) == Verdict::fail) console.exit_code = something_fails;
  }
}

void add_verb(CLI::App& program, Console& console, const std::string& name, const std::string& help,
              std::vector<Question> questions) {
  auto words = std::make_shared<CheckWords>();
  CLI::App* verb = program.add_subcommand(name, help);
  verb->footer("example: yardwright " + name +
               " NAME.yard --json\nexit code: 0 nothing fails, 1 something fails, 2 bad input");
  verb->add_option("SITE", words->file, "the site file, NAME.yard")->required();
  verb->add_option("--phase", words->phase, "as the yard stands once this phase is built (0: today)");
  verb->add_flag("--all", words->all, "list what passes too");
  verb->callback([words, questions = std::move(questions), &console] { run(*words, questions, console); });
}

}  // namespace

void add_check_verbs(CLI::App& program, Console& console) {
  add_verb(program, console, "check", "ask a yard every question", {every_question.begin(), every_question.end()});
  add_verb(program, console, "reach", "can every bin be filled by gravity from the leg?", {Question::reach});
  add_verb(program, console, "turn", "do the trucks get in, dump and get out?", {Question::turn});
  add_verb(program, console, "drain", "where does the rain go, and does it end in a pit?", {Question::drain});
  add_verb(program, console, "clear", "are the distances kept?", {Question::clear});
  add_verb(program, console, "pace", "what does the yard hold, and does it keep pace?", {Question::pace});
}

}  // namespace yardwright::cli
