#include <fmt/format.h>

#include "editor/cli/ask.hpp"
#include "geom/drain/runoff.hpp"

namespace yardwright::cli {

namespace {

struct RunoffOptions {
  double area_m2 = 0;
  double curve_number = 0;
  double rain_m = 0;
  double concentration_s = 600;
  StormType type = StormType::ii;
};

std::string words_for(drain::PeakState state) {
  switch (state) {
    case drain::PeakState::no_runoff: return "no runoff: the rain stays under the initial abstraction";
    case drain::PeakState::curve_number_too_low: return "not known: TR-55 holds for curve numbers of 40 and more";
    case drain::PeakState::concentration_too_long: return "not known: TR-55 holds up to 10 h of concentration";
    case drain::PeakState::computed: break;
  }
  return {};
}

Asked answer(const RunoffOptions& asked) {
  const auto peak =
      drain::graphical_peak(asked.area_m2, asked.curve_number, asked.rain_m, asked.concentration_s, asked.type);
  return {
      "runoff",
      {{"depth", Quantity::rain_depth, peak.runoff_m, {}},
       {"volume", Quantity::volume, peak.runoff_m * asked.area_m2, {}},
       {"peak", Quantity::flow, peak.peak_m3_per_s, words_for(peak.state)},
       {"concentration", Quantity::duration, peak.concentration_s, {}}},
      "TR-55 (1986): curve number runoff and graphical peak with table F-1, 24-hour storm, no ponds; at least 0.1 h"};
}

Problems problems_with(const RunoffOptions& asked) {
  Problems problems;
  if (asked.area_m2 <= 0) problems.push_back({"a catchment has an area", "--area", "give more than 0"});
  if (!(asked.curve_number >= 1 && asked.curve_number <= 100)) {
    problems.push_back({fmt::format("{:g} is no curve number", asked.curve_number), "--cn", "give 1 to 100"});
  }
  if (asked.rain_m < 0) problems.push_back({"rain is not negative", "--rain", "give 0 or more"});
  if (asked.concentration_s < 0) problems.push_back({"a time is not negative", "--tc", "give 0 or more"});
  return problems;
}

}  // namespace

void add_ask_runoff(CLI::App& ask, Console& console) {
  auto asked = std::make_shared<RunoffOptions>();
  CLI::App* verb = ask.add_subcommand("runoff", "runoff depth, volume and peak flow of a 24-hour rain on a catchment");
  verb->footer("example: yardwright ask runoff --area 10ac --cn 89 --rain 5in --tc 15min");
  add_quantity(*verb, "--area", asked->area_m2, Quantity::area, "area of the catchment")->required();
  verb->add_option("--cn", asked->curve_number, "NRCS curve number")->required();
  add_quantity(*verb, "--rain", asked->rain_m, Quantity::rain_depth, "24-hour depth")->required();
  add_quantity(*verb, "--tc", asked->concentration_s, Quantity::duration,
               "time of concentration (10 min where not given)");
  const std::map<std::string, StormType> types{
      {"I", StormType::i}, {"IA", StormType::ia}, {"II", StormType::ii}, {"III", StormType::iii}};
  verb->add_option("--type", asked->type, "NRCS storm type: I, IA, II, III")
      ->transform(CLI::CheckedTransformer(types, CLI::ignore_case))
      ->option_text("I|IA|II|III");
  verb->callback([asked, &console] {
    if (const Problems problems = problems_with(*asked); !problems.empty()) return refuse(problems, console);
    print(answer(*asked), console);
  });
}

}  // namespace yardwright::cli
