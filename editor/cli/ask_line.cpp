#include <fmt/format.h>

#include <memory>

#include "editor/cli/ask.hpp"
#include "geom/clear/line_distance.hpp"
#include "geom/io/catalogs.hpp"

namespace yardwright::cli {

namespace {

struct LineWords {
  double port_m = 0, conductor_m = 0, voltage_v = 7200;
};

AskedValue distance_or_words(std::string name, std::optional<double> distance_m) {
  return {std::move(name), Quantity::length, distance_m.value_or(0), distance_m ? "" : "clears at any distance"};
}

Asked answer_to(const LineWords& words) {
  const RuleBook& rules = shipped_catalogs().rules;
  const Rule& portable = rules.at("clear.line-portable");
  return {"line",
          {distance_or_words("distance", clear::portable_distance_m(words.port_m, words.conductor_m, rules)),
           distance_or_words("permanent", clear::permanent_distance_m(words.port_m, words.conductor_m, rules)),
           {"clears_from_height", Quantity::length, words.port_m + rules.at("clear.line-probe").value, ""},
           {"machines", Quantity::length, clear::equipment_distance_m(words.voltage_v, rules), ""}},
          fmt::format("{}: {}; ask the utility", words_for(portable.basis), portable.source)};
}

Problems problems_with(const LineWords& words) {
  Problems problems;
  if (words.port_m <= 0) problems.push_back({"a fill port is above the ground", "--port", "give more than 0"});
  if (words.conductor_m <= 0) problems.push_back({"a line hangs above the ground", "--conductor", "give more than 0"});
  if (words.voltage_v < 750 || words.voltage_v > 22e3) {
    problems.push_back({"the published clearances are for 750 V to 22 kV", "--voltage", "ask the utility for more"});
  }
  return problems;
}

}  // namespace

void add_ask_line(CLI::App& ask, Console& console) {
  auto words = std::make_shared<LineWords>();
  CLI::App* verb = ask.add_subcommand("line", "how far a bin's wall stays from an overhead line");
  verb->footer("example: yardwright ask line --port 35ft --conductor 18.5ft");
  add_quantity(*verb, "--port", words->port_m, Quantity::length, "highest fill port above the ground")->required();
  add_quantity(*verb, "--conductor", words->conductor_m, Quantity::length, "lowest conductor above the same ground")
      ->required();
  add_quantity(*verb, "--voltage", words->voltage_v, Quantity::voltage, "of the line");
  verb->callback([words, &console] {
    if (const Problems problems = problems_with(*words); !problems.empty()) return refuse(problems, console);
    print(answer_to(*words), console);
  });
}

}  // namespace yardwright::cli
