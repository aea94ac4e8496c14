// `yardwright new`: a yard file with a rectangular lot, ready to be drawn on.
#include <fmt/format.h>

#include <filesystem>
#include <nlohmann/json.hpp>

#include "editor/cli/verb.hpp"
#include "geom/io/site_file.hpp"
#include "geom/units/text.hpp"

namespace yardwright::cli {

namespace {

struct NewYard {
  std::filesystem::path file;
  std::string name;
  UnitSystem units = UnitSystem::us;
  std::string length;
  std::string width;
  bool force = false;
};

/// A side of the lot; 10 acres are a square of 660 ft.
double side_m(const std::string& text, const char* option, UnitSystem units, Problems& problems) {
  const std::string given = text.empty() ? (units == UnitSystem::us ? "660 ft" : "200 m") : text;
  auto side = parse_quantity(given, Quantity::length, units);
  if (side && *side >= 1 && *side <= 100'000) return *side;
  if (side) side = tl::unexpected{Problem{fmt::format("\"{}\" is no side of a lot", given), "", "give 1 m to 100 km"}};
  side.error().where = option;
  problems.push_back(side.error());
  return 0;
}

std::filesystem::path with_ending(std::filesystem::path file) {
  if (file.extension() != ".yard") file += ".yard";
  return file;
}

void report(const Site& site, const NewYard& asked, const Console& console) {
  const double length_m = site.lot.corners[2].x, width_m = site.lot.corners[2].y;
  if (console.json) {
    const nlohmann::ordered_json out{
        {"file", asked.file.string()}, {"name", site.name}, {"length_m", length_m}, {"width_m", width_m}};
    write_json(out);
    return;
  }
  fmt::print("{}: a lot of {} by {}, {}\n", asked.file.string(), text_of(length_m, Quantity::length, site.units),
             text_of(width_m, Quantity::length, site.units), text_of(length_m * width_m, Quantity::area, site.units));
}

void make(NewYard asked, Console& console) {
  Problems problems;
  const double length_m = side_m(asked.length, "--length", asked.units, problems);
  const double width_m = side_m(asked.width, "--width", asked.units, problems);
  if (!problems.empty()) return refuse(problems, console);
  asked.file = with_ending(asked.file);
  if (std::filesystem::exists(asked.file) && !asked.force) {
    return refuse({{"is there already", asked.file.string(), "choose another name, or give --force to replace it"}},
                  console);
  }
  Site site;
  site.name = asked.name.empty() ? asked.file.stem().string() : asked.name;
  site.units = asked.units;
  site.lot = rectangular_lot(length_m, width_m);
  if (const auto saved = save_site(site, asked.file); !saved) return refuse(saved.error(), console);
  report(site, asked, console);
}

}  // namespace

void add_new_verb(CLI::App& program, Console& console) {
  const auto asked = std::make_shared<NewYard>();
  CLI::App* verb = program.add_subcommand("new", "make a yard file with a rectangular lot");
  verb->footer("example: yardwright new my.yard --length 660ft --width 660ft --name \"Home place\"");
  verb->add_option("FILE", asked->file, "NAME.yard")->required();
  verb->add_option("--length", asked->length, "of the lot, west to east: 660ft, 200m");
  verb->add_option("--width", asked->width, "of the lot, south to north");
  const std::map<std::string, UnitSystem> systems{{"us", UnitSystem::us}, {"metric", UnitSystem::metric}};
  verb->add_option("--units", asked->units, "in which the file is kept: us or metric")
      ->transform(CLI::CheckedTransformer{systems})
      ->option_text("us|metric");
  verb->add_option("--name", asked->name, "of the yard; the file's name where left out");
  verb->add_flag("--force", asked->force, "replace a file that is there already");
  verb->callback([asked, &console] { make(*asked, console); });
}

}  // namespace yardwright::cli
