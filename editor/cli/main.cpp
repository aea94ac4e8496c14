#include <fmt/format.h>

#include <cstdio>
#include <exception>

#include "editor/cli/verb.hpp"

namespace yardwright::cli {

namespace {

int run(int count, char** words) {
  CLI::App program{"Plan a farm grain yard: reach, turn, drain, clear, pace, grow.", "yardwright"};
  Console console;
  program.require_subcommand(0, 1);
  program.fallthrough();
  std::string file;
  program.add_option("FILE", file, "without a verb: the yard to open in the window");
  program.add_flag("--json", console.json, "print JSON");
  add_check_verbs(program, console);
  add_ask_verb(program, console);
  add_new_verb(program, console);
  add_ground_verb(program, console);
  add_picture_verb(program, console);
  add_sheet_verb(program, console);
  try {
    program.parse(count, words);
  } catch (const CLI::ParseError& error) {
    return program.exit(error) == 0 ? nothing_fails : bad_input;
  }
  if (program.get_subcommands().empty()) open_window(file, console);
  return console.exit_code;
}

}  // namespace

}  // namespace yardwright::cli

int main(int count, char** words) {
  try {
    return yardwright::cli::run(count, words);
  } catch (const std::exception& error) {
    fmt::print(stderr, "yardwright: {}\n", error.what());
    return yardwright::cli::bad_input;
  }
}
