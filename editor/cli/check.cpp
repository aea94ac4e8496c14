#include "geom/check/check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <nlohmann/json.hpp>
#include <optional>

#include "editor/cli/catchment_print.hpp"
#include "editor/cli/findings_print.hpp"
#include "editor/cli/site_at.hpp"
#include "editor/cli/verb.hpp"
#include "geom/grow/grow.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/units/text.hpp"

namespace yardwright::cli {

namespace {

using Json = nlohmann::ordered_json;

struct CheckWords {
  std::string file;
  std::optional<int> phase;
  bool all = false;
};

/// Those of culverts and inlets, of a yard as asked.
std::vector<drain::PipeCatchment> pipes_of(const Site& site, const Answers& answers) {
  return drain::pipe_catchments(site, answers.surface, shipped_catalogs(), answers.drain->flow);
}

void print_json(const Site& site, const std::vector<Question>& questions, const Answers& answers) {
  Json out{{"site", site.name}, {"verdicts", Json::object()}, {"findings", Json::array()}};
  for (const Question question : questions) {
    const Findings& findings = findings_of(answers, question);
    out["verdicts"][std::string{word(question)}] = word(worst(findings));
    for (const Finding& finding : findings) out["findings"].push_back(as_json(finding, site.units));
  }
  if (std::ranges::find(questions, Question::drain) != questions.end()) {
    out["pits"] = pits_as_json(*answers.drain);
    out["pipe_catchments"] = pipes_as_json(pipes_of(site, answers));
  }
  write_json(out, 1);
}

void print_text(const Site& site, const std::vector<Question>& questions, const Answers& answers, bool all) {
  fmt::print("{}\n", site.name);
  for (const Question question : questions) {
    print_findings(word(question), findings_of(answers, question), site.units, all);
    if (question == Question::drain) print_catchments(site, *answers.drain, pipes_of(site, answers));
  }
  print_caution();
}

void run(const CheckWords& words, const std::vector<Question>& questions, Console& console) {
  const auto asked = site_in_time(words.file, words.phase);
  if (!asked) return refuse(asked.error(), console);
  const Site& site = asked->site;
  Answers answers = check(site, shipped_catalogs());
  if (std::ranges::find(questions, Question::grow) != questions.end())
    answers = grow::with_growth(std::move(answers), site, shipped_catalogs(), asked->later);
  if (console.json)
    print_json(site, questions, answers);
  else
    print_text(site, questions, answers, words.all);
  for (const Question question : questions) {
    if (worst(findings_of(answers, question)) == Verdict::fail) console.exit_code = something_fails;
  }
}

CLI::App* add_verb(CLI::App& program, Console& console, const std::string& name, const std::string& help,
                   std::vector<Question> questions) {
  auto words = std::make_shared<CheckWords>();
  CLI::App* verb = program.add_subcommand(name, help);
  verb->footer("example: yardwright " + name +
               " NAME.yard --json\nexit code: 0 nothing fails, 1 something fails, 2 bad input");
  verb->add_option("SITE", words->file, "the site file, NAME.yard")->required();
  verb->add_option("--phase", words->phase, "as the yard stands once this phase is built (0: today)");
  verb->add_flag("--all", words->all, "list what passes too");
  verb->callback([words, questions = std::move(questions), &console] { run(*words, questions, console); });
  return verb;
}

}  // namespace

void add_check_verbs(CLI::App& program, Console& console) {
  add_verb(program, console, "check", "ask a yard every question", {every_question.begin(), every_question.end()});
  add_verb(program, console, "reach", "can every bin be filled by gravity from the leg?", {Question::reach});
  add_verb(program, console, "turn", "do the trucks get in, dump and get out?", {Question::turn});
  CLI::App* drain =
      add_verb(program, console, "drain", "where does the rain go, and does it end in a pit?", {Question::drain});
  drain->footer(drain->get_footer() + "\n`yardwright storm NAME.yard` lets the storm itself run over the yard");
  add_verb(program, console, "clear", "are the distances kept?", {Question::clear});
  add_verb(program, console, "pace", "what does the yard hold, and does it keep pace?", {Question::pace});
}

}  // namespace yardwright::cli
