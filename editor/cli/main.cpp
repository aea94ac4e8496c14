#include <algorithm>
#include <exception>
#include <string_view>

#include "editor/cli/verb.hpp"

namespace yardwright::cli {

namespace {

/// "ask bin", as far as the words could be read.
std::string verb_called(const CLI::App& program) {
  std::string name;
  for (const CLI::App* verb : program.get_subcommands()) name = verb->get_name() + " " + verb_called(*verb);
  return name;
}

Problem usage_problem(const CLI::App& program, const CLI::ParseError& error) {
  const std::string verb = verb_called(program);
  return {error.what(), verb.substr(0, verb.find_last_not_of(' ') + 1),
          "yardwright " + verb + "--help shows what it takes"};
}

int run(int count, char** words, Console& console) {
  CLI::App program{"Plan a farm grain yard: reach, turn, drain, clear, pace, grow.", "yardwright"};
  program.require_subcommand(0, 1);
  program.fallthrough();
  std::string file;
  program.add_option("FILE", file, "without a verb: the yard to open in the window");
  program.add_flag("--json", console.json, "print JSON");
  add_check_verbs(program, console);
  add_mend_verb(program, console);
  add_grow_verb(program, console);
  add_propose_verb(program, console);
  add_phases_verb(program, console);
  add_earth_verb(program, console);
  add_cost_verb(program, console);
  add_compare_verb(program, console);
  add_rain_verb(program, console);
  add_storm_verb(program, console);
  add_ask_verb(program, console);
  add_new_verb(program, console);
  add_ground_verb(program, console);
  add_picture_verb(program, console);
  add_section_verb(program, console);
  add_sheet_verb(program, console);
  program.parse_complete_callback([&] {  // a word too many falls through to FILE
    if (!file.empty() && !program.get_subcommands().empty()) throw CLI::ExtrasError{{file}};
  });
  try {
    program.parse(count, words);
  } catch (const RefusedOption& error) {
    refuse({error.problem}, console);
    return bad_input;
  } catch (const CLI::ParseError& error) {
    if (error.get_exit_code() == 0) return program.exit(error);  // --help
    refuse({usage_problem(program, error)}, console);
    return bad_input;
  }
  if (program.get_subcommands().empty()) open_window(file, console);
  return console.exit_code;
}

}  // namespace

}  // namespace yardwright::cli

int main(int count, char** words) {
  using namespace yardwright::cli;
  Console console;
  console.json =
      std::any_of(words, words + count, [](std::string_view word) { return word == "--json"; });  // for refusals too
  try {
    return run(count, words, console);
  } catch (const std::exception& error) {
    refuse({{error.what(), "", ""}}, console);
    return bad_input;
  }
}
