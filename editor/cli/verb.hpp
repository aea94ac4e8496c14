// One verb of the command line a file: each adds its sub-command to the program and sets the exit code when it
// has run. 0: nothing fails; 1: something fails; 2: bad input or usage.
#pragma once

#include <CLI/CLI.hpp>
#include <nlohmann/json_fwd.hpp>
#include <string>

#include "geom/units/problem.hpp"
#include "geom/units/quantity.hpp"

namespace yardwright::cli {

enum ExitCode : int { nothing_fails = 0, something_fails = 1, bad_input = 2 };

/// What every verb shares.
struct Console {
  ExitCode exit_code = nothing_fails;
  bool json = false;  ///< --json
};

void add_ask_verb(CLI::App& program, Console& console);
/// new: a yard file with an empty lot.
void add_new_verb(CLI::App& program, Console& console);
void add_sheet_verb(CLI::App& program, Console& console);
/// ground: the levels of a raster or of a list of spots.
void add_ground_verb(CLI::App& program, Console& console);
/// earth: cut and fill, and the levels at which pads move least.
void add_earth_verb(CLI::App& program, Console& console);
/// cost: quantities, and what they cost by a price book.
void add_cost_verb(CLI::App& program, Console& console);
/// compare: versions of a yard side by side.
void add_compare_verb(CLI::App& program, Console& console);
/// rain: the rain table of the yard's place.
void add_rain_verb(CLI::App& program, Console& console);
/// picture: a picture under the plan, fitted by two points.
void add_picture_verb(CLI::App& program, Console& console);
/// check, and one verb a question.
void add_check_verbs(CLI::App& program, Console& console);

/// mend: the least change for what fails, proven by every question.
void add_mend_verb(CLI::App& program, Console& console);

/// grow: where the next bin can go.
void add_grow_verb(CLI::App& program, Console& console);

/// propose: layouts by which the yard can grow.
void add_propose_verb(CLI::App& program, Console& console);

/// phases: whether each passes on its own and leaves the later ones possible.
void add_phases_verb(CLI::App& program, Console& console);

/// storm: the storm itself, step by step, over the yard and into its pits.
void add_storm_verb(CLI::App& program, Console& console);

/// section: the ground along a line, with what it crosses.
void add_section_verb(CLI::App& program, Console& console);

/// Opens the window's program, which lies beside this one, in the place of this process; an empty file is a new yard.
void open_window(const std::string& file, Console& console);

/// Every problem as a sentence on the error stream, and with --json on the output as {"problems": [{where, what, do}]}; the
/// exit code becomes bad_input.
void refuse(const Problems& problems, Console& console);

/// One line, or indented ones; bytes that are no UTF-8, such as those of an odd file name, are replaced.
void write_json(const nlohmann::ordered_json& out, int indent = -1);

/// An option whose text is refused.
struct RefusedOption : CLI::ValidationError {
  explicit RefusedOption(Problem refused) : CLI::ValidationError{sentence(refused)}, problem{std::move(refused)} {}
  Problem problem;
};

/// An option whose text is a quantity in any unit ("80ft"); a bare number is in the shown unit of `bare`.
CLI::Option* add_quantity(CLI::App& verb, const std::string& name, double& si, Quantity quantity,
                          const std::string& help, UnitSystem bare = UnitSystem::us);

}  // namespace yardwright::cli
