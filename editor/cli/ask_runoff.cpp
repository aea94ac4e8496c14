#include <fmt/format.h>

#include "editor/cli/ask.hpp"
#include "geom/drain/runoff.hpp"
#include "geom/drain/unit_hydrograph.hpp"
#include "geom/io/catalogs.hpp"

namespace yardwright::cli {

namespace {

struct RunoffOptions {
  double area_m2 = 0;
  double curve_number = 0;
  double rain_m = 0;
  double concentration_s = 600;
  double rational_c = 0;  ///< 0 where it is not given
  StormType type = StormType::ii;
  std::string distribution;
};

std::string words_for(drain::PeakState state) {
  switch (state) {
    case drain::PeakState::no_runoff: return "no runoff: the rain stays under the initial abstraction";
    case drain::PeakState::curve_number_too_low: return "not known: TR-55 holds for curve numbers of 40 and more";
    case drain::PeakState::concentration_too_long: return "not known: TR-55 holds up to 10 h of concentration";
    case drain::PeakState::no_table: return "not known: TR-55 has no coefficients for a distribution of one's own";
    case drain::PeakState::computed: break;
  }
  return {};
}

std::string curve_words(const MassCurve& curve) {
  return curve.known() ? "" : "not known: give the --distribution of a storm of type own";
}

AskedValue rational_peak(const RunoffOptions& asked, const MassCurve& curve) {
  const std::string words =
      asked.rational_c > 0 ? curve_words(curve) : "not known: give the rational coefficient by --c";
  if (!words.empty()) return {"rational_peak", Quantity::flow, 0, words};
  const double intensity_m_per_s = drain::greatest_intensity_m_per_s(curve, asked.rain_m, asked.concentration_s);
  return {"rational_peak", Quantity::flow,
          drain::rational_peak_m3_per_s(asked.rational_c, intensity_m_per_s, asked.area_m2), ""};
}

drain::HydrographPeak routed_peak(const RunoffOptions& asked, const MassCurve& curve) {
  if (!curve.known()) return {};
  return drain::peak_of(
      drain::storm_hydrograph(asked.area_m2, asked.curve_number, asked.rain_m, asked.concentration_s, curve));
}

Asked answer(const RunoffOptions& asked, const MassCurve& own) {
  const MassCurve curve = curve_of(asked.type, own, shipped_catalogs().storms);
  const auto peak =
      drain::graphical_peak(asked.area_m2, asked.curve_number, asked.rain_m, asked.concentration_s, asked.type);
  const auto routed = routed_peak(asked, curve);
  const std::string no_flow =
      curve.known() && routed.at_s == 0 ? words_for(drain::PeakState::no_runoff) : curve_words(curve);
  return {
      "runoff",
      {{"depth", Quantity::rain_depth, peak.runoff_m, {}},
       {"volume", Quantity::volume, peak.runoff_m * asked.area_m2, {}},
       {"peak", Quantity::flow, peak.peak_m3_per_s, words_for(peak.state)},
       rational_peak(asked, curve),
       {"hydrograph_peak", Quantity::flow, routed.flow_m3_per_s, no_flow},
       {"hydrograph_peak_at", Quantity::duration, routed.at_s, no_flow},
       {"concentration", Quantity::duration, peak.concentration_s, {}}},
      "TR-55 (1986): curve number runoff, graphical peak with table F-1, no ponds, at least 0.1 h; the rational peak "
      "by the storm's greatest mean intensity over the time of concentration; the unit hydrograph of NEH 630 ch. 16 "
      "(484), its time from the storm's start"};
}

Problems problems_with(const RunoffOptions& asked) {
  Problems problems;
  if (asked.area_m2 <= 0) problems.push_back({"a catchment has an area", "--area", "give more than 0"});
  if (!(asked.curve_number >= 1 && asked.curve_number <= 100)) {
    problems.push_back({fmt::format("{:g} is no curve number", asked.curve_number), "--cn", "give 1 to 100"});
  }
  if (asked.rain_m < 0) problems.push_back({"rain is not negative", "--rain", "give 0 or more"});
  if (!(asked.rational_c >= 0 && asked.rational_c <= 1))
    problems.push_back({fmt::format("{:g} is no rational coefficient", asked.rational_c), "--c", "give 0 to 1"});
  if (!asked.distribution.empty() && asked.type != StormType::own)
    problems.push_back({"a distribution is of a storm of its own", "--distribution", "give --type own too"});
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
  verb->add_option("--c", asked->rational_c, "rational coefficient, for the rational peak");
  const std::map<std::string, StormType> types{{"I", StormType::i},
                                               {"IA", StormType::ia},
                                               {"II", StormType::ii},
                                               {"III", StormType::iii},
                                               {"own", StormType::own}};
  verb->add_option("--type", asked->type, "NRCS storm type I, IA, II, III, or own")
      ->transform(CLI::CheckedTransformer(types, CLI::ignore_case))
      ->option_text("I|IA|II|III|own");
  verb->add_option("--distribution", asked->distribution,
                   "of a storm of type own: hours with the share fallen by then, \"0 0, 6 0.08, 12 0.66, 24 1\"");
  verb->callback([asked, &console] {
    Problems problems = problems_with(*asked);
    auto own = parse_mass_curve(asked->distribution);
    if (!own) problems.push_back({own.error().what, "--distribution", own.error().mend});
    if (!problems.empty()) return refuse(problems, console);
    print(answer(*asked, *own), console);
  });
}

}  // namespace yardwright::cli
