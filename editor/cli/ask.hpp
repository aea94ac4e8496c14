// `yardwright ask`: one question without a site. Each question is a file of its own, ask_NAME.cpp, which adds
// its sub-command and fills an Asked; printing is shared.
#pragma once

#include <string>
#include <vector>

#include "editor/cli/verb.hpp"

namespace yardwright::cli {

/// One number of an answer, or words in its place ("no steady state").
struct AskedValue {
  std::string name;
  Quantity quantity = Quantity::ratio;
  double si = 0;
  std::string words;  ///< where not empty, printed instead of the number
};

struct Asked {
  std::string question;
  std::vector<AskedValue> answers;
  std::string basis;
};

/// In US and metric units, as lines or as JSON:
/// {"question":"spout","answers":{"slope":{"value":..,"unit":"deg"},...},"basis":".."}; lengths in m and ft.
void print(const Asked& asked, const Console& console);

void add_ask_spout(CLI::App& ask, Console& console);
void add_ask_runoff(CLI::App& ask, Console& console);
void add_ask_manning(CLI::App& ask, Console& console);
void add_ask_bin(CLI::App& ask, Console& console);
void add_ask_line(CLI::App& ask, Console& console);
void add_ask_turn(CLI::App& ask, Console& console);
void add_ask_uplift(CLI::App& ask, Console& console);

}  // namespace yardwright::cli
