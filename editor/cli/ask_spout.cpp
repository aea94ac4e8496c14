#include "editor/cli/ask.hpp"

namespace yardwright::cli {

void add_ask_spout(CLI::App& ask, Console& console) {
  ask.add_subcommand("spout", "slope and length of a gravity spout")->callback([&console] { print({}, console); });
}

}  // namespace yardwright::cli
