#include "editor/cli/ask.hpp"
#include "geom/drain/channel.hpp"

namespace yardwright::cli {

namespace {

struct ManningOptions {
  double diameter_m = 0;
  double bottom_m = 0;
  double side_ratio = 0;
  double slope_ratio = 0;
  double roughness_n = 0;
  double flow_m3_per_s = 0;
};

std::string words_for(drain::FlowState state) {
  switch (state) {
    case drain::FlowState::surcharged: return "surcharged: more than the pipe carries with a free surface";
    case drain::FlowState::no_slope: return "no steady state: the slope must fall";
    case drain::FlowState::dry: return "dry";
    case drain::FlowState::steady: break;
  }
  return {};
}

std::vector<AskedValue> values_of(const drain::UniformFlow& flow) {
  const std::string words = words_for(flow.state);
  return {{"flow", Quantity::flow, flow.flow_m3_per_s, words},
          {"velocity", Quantity::speed, flow.speed_m_per_s, words},
          {"depth", Quantity::length, flow.depth_m, words},
          {"froude", Quantity::ratio, flow.froude_ratio,
           words.empty() && flow.froude_ratio == 0 ? "none: the pipe is full" : words}};
}

Asked pipe_answer(const ManningOptions& asked) {
  const drain::Pipe pipe{asked.diameter_m, asked.slope_ratio, asked.roughness_n};
  const auto full = drain::flow_at_depth(pipe, pipe.diameter_m);
  if (asked.flow_m3_per_s <= 0) return {"manning", values_of(full), "Manning, pipe full, HEC-22"};
  Asked answer{"manning", values_of(drain::normal_flow(pipe, asked.flow_m3_per_s)),
               "Manning, the lower depth where two carry the flow, HEC-22"};
  answer.answers.push_back({"full_flow", Quantity::flow, full.flow_m3_per_s, words_for(full.state)});
  return answer;
}

Asked channel_answer(const ManningOptions& asked) {
  const drain::Channel channel{asked.bottom_m, asked.side_ratio, asked.slope_ratio, asked.roughness_n};
  Asked answer{"manning", values_of(drain::normal_flow(channel, asked.flow_m3_per_s)), "Manning, normal depth, HEC-22"};
  answer.answers.push_back(
      {"critical_depth", Quantity::length, drain::critical_depth_m(channel, asked.flow_m3_per_s), {}});
  return answer;
}

void answer(const ManningOptions& asked, Console& console) {
  const bool swale = asked.bottom_m > 0 || asked.side_ratio > 0;
  if (asked.diameter_m < 0 || asked.bottom_m < 0 || asked.side_ratio < 0 || asked.flow_m3_per_s < 0) {
    return refuse({{"a size or a flow is negative", "ask manning", "give 0 or more"}}, console);
  }
  if (!(asked.roughness_n > 0 && asked.roughness_n < 10)) {
    return refuse({{"the roughness is out of range", "--n", "give Manning's n, such as 0.013 for concrete"}}, console);
  }
  if ((asked.diameter_m > 0) == swale) {
    return refuse({{"neither one pipe nor one channel is given", "ask manning",
                    "give --diameter for a pipe, or --bottom and --side for a channel"}},
                  console);
  }
  if (swale && asked.flow_m3_per_s <= 0) {
    return refuse({{"a channel has no full flow", "--flow", "give the flow that it carries"}}, console);
  }
  print(swale ? channel_answer(asked) : pipe_answer(asked), console);
}

}  // namespace

void add_ask_manning(CLI::App& ask, Console& console) {
  auto asked = std::make_shared<ManningOptions>();
  CLI::App* verb =
      ask.add_subcommand("manning", "flow, velocity and depth of a pipe (--diameter) or a channel (--bottom, --side)");
  verb->footer("example: yardwright ask manning --diameter 15in --slope 0.5% --n 0.013 --flow 3cfs");
  add_quantity(*verb, "--diameter", asked->diameter_m, Quantity::small_length, "inside, of a pipe");
  add_quantity(*verb, "--bottom", asked->bottom_m, Quantity::length, "bottom width of a channel; 0 is a V");
  add_quantity(*verb, "--side", asked->side_ratio, Quantity::side_slope,
               "side slope of a channel, run for one of rise");
  add_quantity(*verb, "--slope", asked->slope_ratio, Quantity::grade, "fall along it")->required();
  verb->add_option("--n", asked->roughness_n, "Manning's n")->required();
  add_quantity(*verb, "--flow", asked->flow_m3_per_s, Quantity::flow,
               "flow whose depth is asked; a pipe without it is full");
  verb->callback([asked, &console] { answer(*asked, console); });
}

}  // namespace yardwright::cli
