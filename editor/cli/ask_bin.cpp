#include <fmt/format.h>

#include <memory>

#include "editor/cli/ask.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/pace/bin_volume.hpp"

namespace yardwright::cli {

namespace {

struct BinWords {
  double diameter_m = 0, eave_m = 0, floor_m = 0, sump_m = 0, roof_deg = 30, fill_deg = -1, empty_deg = -1;
  std::string grain = "corn";
};

/// The catalogue's grain, with the angles that were typed in its place.
Grain grain_of(const BinWords& words, const Grain& shipped) {
  Grain grain = shipped;
  if (words.fill_deg >= 0) grain.filling = Angle::degrees(words.fill_deg);
  if (words.empty_deg >= 0) grain.emptying = Angle::degrees(words.empty_deg);
  return grain;
}

AskedValue bushels(std::string name, GrainVolume volume) {
  return {std::move(name), Quantity::grain_volume, volume.as_cubic_metres(), ""};
}

Asked answer_to(const BinWords& words, const Grain& grain) {
  const pace::BinRoom room{
      words.diameter_m / 2, words.eave_m - words.floor_m, Angle::degrees(words.roof_deg), {}, words.sump_m};
  const pace::BinVolume volume = words.fill_deg == 0 ? pace::struck(room, grain) : pace::heaped(room, grain);
  return {"bin",
          {bushels("level", volume.level),
           bushels("heap", volume.heap),
           bushels("total", volume.total),
           bushels("flows", volume.flows),
           bushels("stays", volume.stays),
           bushels("core", volume.core),
           {"crater_radius", Quantity::length, volume.crater_radius_m, ""}},
          fmt::format("geometry; heap at {:g} deg, emptying at {:g} deg: {}", grain.filling.as_degrees(),
                      grain.emptying.as_degrees(), grain.source)};
}

Problems problems_with(const BinWords& words, const Grain* grain) {
  Problems problems;
  if (words.diameter_m <= 0) problems.push_back({"a bin has a diameter", "--diameter", "give more than 0"});
  if (words.eave_m <= 0) problems.push_back({"a bin has a wall", "--eave", "give more than 0"});
  if (words.floor_m < 0 || words.floor_m > words.eave_m) {
    problems.push_back({"the floor lies outside the wall", "--floor", "give a height between 0 and the eave"});
  }
  if (words.sump_m < 0) problems.push_back({"a radius is not negative", "--sump", "give 0 or more"});
  for (const auto& [name, deg] :
       {std::pair{"--fill", words.fill_deg}, {"--empty", words.empty_deg}, {"--roof", words.roof_deg}}) {
    if (deg > 80) problems.push_back({"grain does not lie that steep", name, "give an angle up to 80 deg"});
  }
  if (grain == nullptr)
    problems.push_back({"the grain catalogue has no \"" + words.grain + "\"", "--grain", "try corn"});
  return problems;
}

}  // namespace

void add_ask_bin(CLI::App& ask, Console& console) {
  auto words = std::make_shared<BinWords>();
  CLI::App* verb = ask.add_subcommand("bin", "what a round bin holds, and what its centre sump leaves");
  verb->footer("example: yardwright ask bin --diameter 36ft --eave 24ft --fill 23 --empty 27");
  add_quantity(*verb, "--diameter", words->diameter_m, Quantity::length, "inside of the wall")->required();
  add_quantity(*verb, "--eave", words->eave_m, Quantity::length, "height of the wall")->required();
  add_quantity(*verb, "--floor", words->floor_m, Quantity::length, "height of a raised floor");
  add_quantity(*verb, "--fill", words->fill_deg, Quantity::angle, "filling angle; 0 is struck level");
  add_quantity(*verb, "--empty", words->empty_deg, Quantity::angle, "emptying angle");
  add_quantity(*verb, "--roof", words->roof_deg, Quantity::angle, "roof slope");
  add_quantity(*verb, "--sump", words->sump_m, Quantity::length, "radius of the centre sump");
  verb->add_option("--grain", words->grain, "gives the angles that are not typed");
  verb->callback([words, &console] {
    const Catalogs catalogs = shipped_catalogs();
    const Grain* grain = find(catalogs.grains, words->grain);
    if (const Problems problems = problems_with(*words, grain); !problems.empty()) return refuse(problems, console);
    print(answer_to(*words, grain_of(*words, *grain)), console);
  });
}

}  // namespace yardwright::cli
