#include <fmt/format.h>

#include <cmath>

#include "editor/cli/ask.hpp"
#include "geom/drain/uplift.hpp"
#include "geom/site/field.hpp"

namespace yardwright::cli {

namespace {

struct UpliftWords {
  drain::PitShell pit{0, 0, 0, 8 * 0.0254, 12 * 0.0254};
  drain::SoilAndWater ground;
  double safety_ratio = 1.1;
};

constexpr double newtons_per_kg = 9.80665;

Asked answer(const UpliftWords& asked) {
  const drain::Uplift uplift = drain::uplift_of(asked.pit, asked.ground);
  const double safety = uplift.safety_ratio();
  return {
      "uplift",
      {{"concrete", Quantity::mass, uplift.weight_n / newtons_per_kg, {}},
       {"soil_on_toe", Quantity::mass, uplift.toe_n / newtons_per_kg, {}},
       {"lifted", Quantity::mass, uplift.uplift_n / newtons_per_kg, {}},
       {"safety", Quantity::ratio, safety, std::isinf(safety) ? "the water stays under its base" : ""},
       {"keep_water_below",
        Quantity::length,
        drain::highest_water_depth_m(asked.pit, asked.ground, asked.safety_ratio),
        {}}},
      "buoyancy of an empty pit, no wall friction; concrete 150, moist soil 120 lb/ft3; a licensed engineer decides"};
}

Problems problems_with(const UpliftWords& asked) {
  Problems problems;
  const auto& pit = asked.pit;
  if (pit.inside_width_m <= 0 || pit.inside_length_m <= 0)
    problems.push_back({"a pit has a width and a length", "--width, --length", "give more than 0"});
  if (pit.wall_m < 0 || pit.floor_m < 0 || pit.toe_m < 0)
    problems.push_back({"a thickness is not negative", "--wall, --floor, --toe", "give 0 or more"});
  if (pit.base_depth_m <= pit.floor_m)
    problems.push_back({"the pit is no deeper than its floor is thick", "--depth", "give the depth of its underside"});
  if (asked.ground.water_depth_m < 0)
    problems.push_back({"the groundwater stands over the ground", "--water", "give its depth below the ground"});
  if (asked.safety_ratio <= 0) problems.push_back({"a safety is more than 0", "--safety", "give 1.1 or more"});
  return problems;
}

}  // namespace

void add_ask_uplift(CLI::App& ask, Console& console) {
  auto asked = std::make_shared<UpliftWords>();
  CLI::App* verb = ask.add_subcommand("uplift", "does groundwater lift an empty concrete pit?");
  verb->footer(
      "example: yardwright ask uplift --width 10ft --length 12ft --depth 10ft --water 4ft --wall 10in --floor 12in");
  add_quantity(*verb, "--width", asked->pit.inside_width_m, Quantity::length, "inside")->required();
  add_quantity(*verb, "--length", asked->pit.inside_length_m, Quantity::length, "inside")->required();
  add_quantity(*verb, "--depth", asked->pit.base_depth_m, Quantity::length, "underside of its floor, below the ground")
      ->required();
  add_quantity(*verb, "--water", asked->ground.water_depth_m, Quantity::length, "groundwater, below the ground")
      ->required();
  add_quantity(*verb, "--wall", asked->pit.wall_m, Quantity::small_length, "thickness (8 in where not given)");
  add_quantity(*verb, "--floor", asked->pit.floor_m, Quantity::small_length, "thickness (12 in where not given)");
  add_quantity(*verb, "--toe", asked->pit.toe_m, Quantity::small_length, "the floor reaches out by this");
  verb->add_option("--safety", asked->safety_ratio, "for the highest water that the pit stands (1.1 where not given)");
  verb->callback([asked, &console] {
    if (const Problems problems = problems_with(*asked); !problems.empty()) return refuse(problems, console);
    print(answer(*asked), console);
  });
}

}  // namespace yardwright::cli
