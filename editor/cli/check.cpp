#include "geom/check/check.hpp"

#include <fmt/format.h>

#include <memory>
#include <nlohmann/json.hpp>
#include <optional>

#include "editor/cli/site_at.hpp"
#include "editor/cli/verb.hpp"
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

void print_json(const Site& site, const std::vector<Question>& questions, const Answers& answers) {
  Json out{{"site", site.name}, {"verdicts", Json::object()}, {"findings", Json::array()}};
  for (const Question question : questions) {
    const Findings& findings = findings_of(answers, question);
    out["verdicts"][std::string{word(question)}] = word(worst(findings));
    for (const Finding& finding : findings) out["findings"].push_back(as_json(finding, site.units));
  }
  write_json(out, 1);
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
