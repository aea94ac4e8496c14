#include <fmt/format.h>

#include <memory>

#include "editor/cli/ask.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/reach/spout_line.hpp"

namespace yardwright::cli {

namespace {

struct SpoutWords {
  double discharge_m = 0, drop_m = 0, inlet_m = 0, run_m = 0;
  std::string state = "dry";
};

Asked answer_to(const SpoutWords& words) {
  const Rule& rule = shipped_catalogs().rules.at(words.state == "wet" ? "reach.slope-wet" : "reach.slope-dry");
  const Angle least = Angle::degrees(rule.value);
  const Leg leg{.discharge_height_m = words.discharge_m, .distributor_drop_m = words.drop_m};
  const DesignSurface flat;
  const reach::SpoutLine line{{}, {words.run_m, 0}, reach::outlet_level_m(leg, flat), words.inlet_m};
  const double fall_m = line.from_level_m - words.inlet_m;
  return {"spout",
          {{"slope", Quantity::angle, line.slope().as_degrees(), ""},
           {"required", Quantity::angle, rule.value, ""},
           {"length", Quantity::length, line.length_m(), ""},
           {"reach", Quantity::length, fall_m / tan(least), fall_m > 0 ? "" : "none: the inlet is above the outlet"},
           {"discharge_needed", Quantity::length,
            reach::discharge_needed_m(leg, flat, words.inlet_m, words.run_m, least), ""}},
          fmt::format("{}: {}", words_for(rule.basis), rule.source)};
}

Problems problems_with(const SpoutWords& words) {
  Problems problems;
  if (words.discharge_m <= 0)
    problems.push_back({"a leg discharges above the ground", "--discharge", "give more than 0"});
  if (words.drop_m < 0) problems.push_back({"a distributor hangs under the discharge", "--drop", "give 0 or more"});
  if (words.inlet_m < 0) problems.push_back({"an inlet is not under the ground", "--inlet", "give 0 or more"});
  if (words.run_m <= 0) problems.push_back({"a spout goes some way on the plan", "--run", "give more than 0"});
  return problems;
}

}  // namespace

void add_ask_spout(CLI::App& ask, Console& console) {
  auto words = std::make_shared<SpoutWords>();
  CLI::App* verb = ask.add_subcommand("spout", "slope, length and reach of a gravity spout");
  verb->footer("example: yardwright ask spout --discharge 80ft --drop 6ft --inlet 36ft --run 60ft --state wet");
  add_quantity(*verb, "--discharge", words->discharge_m, Quantity::length, "leg discharge above the ground")
      ->required();
  add_quantity(*verb, "--drop", words->drop_m, Quantity::length, "discharge down to the distributor's outlets");
  add_quantity(*verb, "--inlet", words->inlet_m, Quantity::length, "inlet above the same ground")->required();
  add_quantity(*verb, "--run", words->run_m, Quantity::length, "distance on the plan")->required();
  verb->add_option("--state", words->state, "dry or wet grain")->check(CLI::IsMember({"dry", "wet"}));
  verb->callback([words, &console] {
    if (const Problems problems = problems_with(*words); !problems.empty()) return refuse(problems, console);
    print(answer_to(*words), console);
  });
}

}  // namespace yardwright::cli
