// `yardwright ground`: gives a yard file the ground of a raster or of a list of spot levels.
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <memory>
#include <nlohmann/json.hpp>

#include "editor/cli/verb.hpp"
#include "geom/io/ground_import.hpp"
#include "geom/io/site_file.hpp"
#include "geom/site/edit.hpp"
#include "geom/units/text.hpp"

namespace yardwright::cli {

namespace {

struct AskedGround {
  std::filesystem::path site;
  std::filesystem::path from;
  ImportOptions options;
  std::vector<double> centre_m;
};

struct Levels {
  double lowest_m = 0, highest_m = 0;
};

Levels levels_of(const LevelGrid& ground) {
  const auto [low, high] = std::ranges::minmax(ground.values());
  return {low, high};
}

void print_json(const ImportedGround& read, const AskedGround& asked) {
  const GridFrame& frame = read.ground.levels.frame();
  const Levels levels = levels_of(read.ground.levels);
  const nlohmann::ordered_json out{{"file", asked.site.string()},
                                   {"from", asked.from.string()},
                                   {"coordinate_system", read.coordinate_system},
                                   {"epsg", read.tie.epsg},
                                   {"origin_easting_m", read.tie.easting_m},
                                   {"origin_northing_m", read.tie.northing_m},
                                   {"columns", frame.columns},
                                   {"rows", frame.rows},
                                   {"cell_m", frame.cell_m},
                                   {"south_west_m", {frame.south_west.x, frame.south_west.y}},
                                   {"lowest_m", levels.lowest_m},
                                   {"highest_m", levels.highest_m},
                                   {"filled_cells", read.filled_cells},
                                   {"notes", read.notes}};
  write_json(out);
}

void print_lines(const ImportedGround& read, const AskedGround& asked, UnitSystem units) {
  const GridFrame& frame = read.ground.levels.frame();
  const Levels levels = levels_of(read.ground.levels);
  const auto length = [units](double m) { return text_of(m, Quantity::length, units); };
  fmt::print("{}: the ground of {}\n", asked.site.string(), asked.from.string());
  fmt::print("{:<20} {}\n", "coordinate system", read.coordinate_system);
  if (read.tie.epsg != 0)
    fmt::print("{:<20} EPSG {}, {:.2f} m east, {:.2f} m north\n", "site's origin", read.tie.epsg, read.tie.easting_m,
               read.tie.northing_m);
  fmt::print("{:<20} {} x {} cells of {}: {} by {}\n", "size", frame.columns, frame.rows, length(frame.cell_m),
             length(frame.columns * frame.cell_m), length(frame.rows * frame.cell_m));
  fmt::print("{:<20} {} to {}\n", "levels", length(levels.lowest_m), length(levels.highest_m));
  fmt::print("{:<20} {}\n", "holes",
             read.filled_cells == 0 ? "none" : fmt::format("{} cells, filled", read.filled_cells));
  for (const std::string& note : read.notes) fmt::print("note: {}\n", note);
}

void import(AskedGround asked, Console& console) {
  const auto site = load_site(asked.site);
  if (!site) return refuse(site.error(), console);
  if (asked.centre_m.size() == 2) asked.options.centre_at = SitePoint{asked.centre_m[0], asked.centre_m[1]};
  const auto read = import_ground(asked.from, *site, asked.options);
  if (!read) return refuse(read.error(), console);
  const Site grounded = apply(*site, SetGround{read->ground, read->tie});
  if (const auto saved = save_site(grounded, asked.site); !saved) return refuse(saved.error(), console);
  if (console.json)
    print_json(*read, asked);
  else
    print_lines(*read, asked, site->units);
}

}  // namespace

void add_ground_verb(CLI::App& program, Console& console) {
  const auto asked = std::make_shared<AskedGround>();
  CLI::App* verb = program.add_subcommand("ground", "give a yard the ground of a raster or of spot levels");
  verb->footer("example: yardwright ground my.yard --from lidar.tif --cell 1m");
  verb->add_option("SITE", asked->site, "NAME.yard")->required();
  verb->add_option("--from", asked->from, "GeoTIFF, ESRI ASCII grid, or a list of x, y, level (.csv .txt .tsv .xyz)")
      ->required();
  add_quantity(*verb, "--cell", asked->options.cell_m, Quantity::length, "size of a cell of the ground; 1 m",
               UnitSystem::metric);
  add_quantity(*verb, "--margin", asked->options.margin_m, Quantity::length, "of ground around the lot; 100 m",
               UnitSystem::metric);
  verb->add_flag("--fill-holes", asked->options.fill_holes, "fill cells without level from the cells around them");
  const std::map<std::string, MapUnit> units{
      {"m", MapUnit::metre}, {"ft", MapUnit::foot}, {"us-ft", MapUnit::us_survey_foot}};
  const auto add_unit = [&](const char* name, std::optional<MapUnit>& unit, const char* help) {
    verb->add_option_function<std::string>(
            name, [&unit, units](const std::string& text) { unit = units.at(text); }, help)
        ->check(CLI::IsMember{units});
  };
  add_unit("--vertical-unit", asked->options.vertical_unit, "of the levels: m, ft or us-ft");
  add_unit("--plan-unit", asked->options.plan_unit, "of spot levels' x and y: m, ft or us-ft");
  verb->add_option("--epsg", asked->options.epsg, "coordinate system of a file that does not say its own");
  verb->add_option("--centre", asked->centre_m,
                   "where the file's centre lies, metres east and north of the site's origin")
      ->expected(2);
  verb->callback([asked, &console] { import(*asked, console); });
}

}  // namespace yardwright::cli
