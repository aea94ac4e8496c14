// `yardwright section`: the ground cut along a line of a yard, as a table and as a drawing.
#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "editor/cli/findings_print.hpp"
#include "editor/cli/site_at.hpp"
#include "editor/cli/site_place.hpp"
#include "editor/cli/storm_options.hpp"
#include "geom/drain/storm/storm_words.hpp"
#include "geom/io/catalogs.hpp"
#include "geom/sheet/section_page.hpp"
#include "geom/sheet/section_water_marks.hpp"
#include "geom/sheet/sheet_file.hpp"
#include "geom/site/footprint.hpp"
#include "geom/units/text.hpp"

namespace yardwright::cli {

namespace {

using Json = nlohmann::ordered_json;

struct SectionWords {
  std::string file;
  std::vector<std::string> places;
  std::string along;
  std::string output;
  double every_m = 0;  ///< 0: a round step
  bool storm = false;
  AskedStorm asked;
  std::optional<int> phase;
};

struct Line {
  SitePath path;
  ItemId along;
  std::string title;
};

constexpr double rows_wanted = 20, most_rows = 5000;

Expected<Line> line_along(const Site& site, const std::string& words) {
  for (const Item& item : site.items) {
    if (title_of(item) != words && std::to_string(item.id.number) != words) continue;
    const SitePath* path = path_of(item.thing);
    if (path != nullptr && !is_ring(item.thing)) return Line{*path, item.id, "along " + title_of(item)};
    return refused(title_of(item) + " is no line", "--along", "name a drive, berm, swale, culvert or the like");
  }
  return refused("no item is called \"" + words + "\"", "--along", "give the name or number of an item with a line");
}

Expected<Line> line_of(const SectionWords& words, const Site& site) {
  if (words.along.empty() == words.places.empty())
    return refused("one line is needed", "section", "give --line with two places or more, or --along with an item");
  if (!words.along.empty()) return line_along(site, words.along);
  Line line;
  for (const std::string& place : words.places) {
    const auto at = site_place(place, "--line", site.units);
    if (!at) return tl::unexpected{at.error()};
    line.path.push_back(*at);
    line.title += (line.title.empty() ? "from " : " to ") + place;
  }
  return line;
}

/// What cannot be drawn or told of a line, or nothing.
Problems problems_with(const Line& line, const DesignSurface& surface, const SectionWords& words) {
  const char* option = words.along.empty() ? "--line" : "--along";
  if (!surface.known()) return {{"the yard has no ground", "section", "bring levels in with yardwright ground"}};
  if (!(length(line.path) > 0)) return {{"the line has no length", option, "give two places that differ"}};
  const GroundSection ground = ground_section(surface, line.path);
  if (std::ranges::none_of(ground.points, [](const SectionPoint& point) { return point.levels.has_value(); }))
    return {{"the line lies beyond the known ground", option, "give places on it"}};
  if (words.every_m < 0 || (words.every_m > 0 && ground.length_m() / words.every_m > most_rows))
    return {{"that makes too many rows", "--every", "give a longer step"}};
  return {};
}

/// Puts in the deepest water of the storm that is asked for; what it is, in words.
Expected<std::string> add_storm(SectionView& view, Site site, const DesignSurface& surface, const AskedStorm& asked) {
  const auto wet = with_asked_rain(std::move(site), asked);
  if (!wet) return tl::unexpected{wet.error()};
  const auto options = storm_options(asked, *wet);
  if (!options) return tl::unexpected{options.error()};
  const auto story = drain::storm::run_storm(*wet, surface, shipped_catalogs(), *options);
  if (!story) return tl::unexpected{story.error()};
  view.water = drain::storm::deepest_water(view.ground, surface.design, *story);
  view.pits = drain::storm::highest_pit_water(*story);
  view.pipes = drain::storm::highest_pipe_water(*wet, surface.design, *story);
  std::string words =
      fmt::format("deepest water of {} in 24 h", text_of(wet->storm.rain_m, Quantity::rain_depth, wet->units));
  if (options->mishap != drain::storm::Mishap::none) words += "; " + drain::storm::mishap_words(*wet, *options);
  return words;
}

/// Of the point that lies nearest.
std::optional<double> water_near(const SectionView& view, double chainage_m) {
  if (view.water.empty()) return std::nullopt;
  const auto nearest = std::ranges::min_element(
      view.ground.points, {}, [&](const SectionPoint& point) { return std::abs(point.chainage_m - chainage_m); });
  return view.water[static_cast<std::size_t>(nearest - view.ground.points.begin())];
}

std::vector<double> rows_of(const SectionWords& words, double length_m, UnitSystem units) {
  const double unit_m = shown_unit(Quantity::length, units).factor;
  const double step_m = words.every_m > 0 ? words.every_m : round_step(length_m / rows_wanted / unit_m) * unit_m;
  std::vector<double> rows;
  for (double i = 0; i * step_m < length_m - step_m * 1e-6; ++i) rows.push_back(i * step_m);
  rows.push_back(length_m);
  return rows;
}

void print_row(const SectionView& view, double chainage_m, UnitSystem units) {
  const auto words = [&](double m) { return text_of(m, Quantity::length, units); };
  const auto levels = levels_at(view.ground, chainage_m);
  if (!levels) return fmt::print("{:>12}  beyond the known ground\n", words(chainage_m));
  fmt::print("{:>12}{:>12}{:>12}{:>12}", words(chainage_m), words(levels->existing_m), words(levels->design_m),
             signed_text_of(levels->design_m - levels->existing_m, Quantity::length, units));
  if (!view.water.empty()) {
    const auto water_m = water_near(view, chainage_m);
    fmt::print("{:>12}", water_m ? words(*water_m) : "dry");
  }
  fmt::print("\n");
}

/// The highest level in what lies in the ground, of the stretch that the line crosses.
std::optional<double> water_in(const SectionView& view, const LineCrossing& crossing) {
  std::optional<double> highest_m;
  for (const WaterPoint& point : water_below(view, crossing))
    if (point.level_m > point.bed_m) highest_m = std::max(highest_m.value_or(point.level_m), point.level_m);
  return highest_m;
}

void print_crossing(const SectionView& view, const LineCrossing& crossing, const std::string& name, UnitSystem units) {
  const auto words = [&](double m) { return text_of(m, Quantity::length, units); };
  fmt::print("{:<24}{:>12}{:>12}", name, words(crossing.from_m), words(crossing.to_m));
  if (crossing.at_from)
    fmt::print("{:>12}{:>12}", words(std::min(crossing.at_from->base_m, crossing.at_to->base_m)),
               words(std::max(crossing.at_from->top_m, crossing.at_to->top_m)));
  if (!view.water.empty() && crossing.at_from && crossing.is_below) {
    const auto water_m = water_in(view, crossing);
    fmt::print("{:>12}", water_m ? words(*water_m) : "dry");
  }
  fmt::print("\n");
}

void print_section(const Site& site, const Line& line, const SectionView& view, const SectionWords& words) {
  fmt::print("{}\nsection {}, {} long\n\n", site.name, line.title,
             text_of(view.ground.length_m(), Quantity::length, site.units));
  fmt::print("{:>12}{:>12}{:>12}{:>12}{}\n", "chainage", "existing", "design", "fill",
             view.water.empty() ? "" : fmt::format("{:>12}", "water"));
  for (const double chainage_m : rows_of(words, view.ground.length_m(), site.units))
    print_row(view, chainage_m, site.units);
  if (view.crossings.empty()) return;
  fmt::print("\n{:<24}{:>12}{:>12}{:>12}{:>12}{}\n", "crosses", "from", "to", "base", "top",
             view.water.empty() ? "" : fmt::format("{:>12}", "water"));
  for (std::size_t i = 0; i < view.crossings.size(); ++i) {
    const LineCrossing& crossing = view.crossings[i];
    print_crossing(view, crossing, view.names[i] + (crossing.is_pit ? ", its pit" : ""), site.units);
  }
}

Json point_json(const SectionView& view, std::size_t i) {
  const SectionPoint& point = view.ground.points[i];
  Json out{{"chainage_m", point.chainage_m}, {"east_m", point.at.x}, {"north_m", point.at.y}};
  out["existing_m"] = point.levels ? Json(point.levels->existing_m) : Json(nullptr);
  out["design_m"] = point.levels ? Json(point.levels->design_m) : Json(nullptr);
  if (!view.water.empty()) out["water_m"] = view.water[i] ? Json(*view.water[i]) : Json(nullptr);
  return out;
}

Json crossing_json(const SectionView& view, const LineCrossing& crossing, const std::string& name) {
  Json out{{"item", crossing.item.number},
           {"name", name},
           {"below", crossing.is_below},
           {"from_m", crossing.from_m},
           {"to_m", crossing.to_m}};
  if (crossing.at_from) {
    out["base_m"] = {crossing.at_from->base_m, crossing.at_to->base_m};
    out["top_m"] = {crossing.at_from->top_m, crossing.at_to->top_m};
  }
  if (view.water.empty() || !crossing.is_below || !crossing.at_from) return out;
  const auto water_m = water_in(view, crossing);
  out["water_m"] = water_m ? Json(*water_m) : Json(nullptr);
  return out;
}

Json section_json(const Site& site, const Line& line, const SectionView& view) {
  Json out{{"site", site.name},
           {"line", line.title},
           {"length_m", view.ground.length_m()},
           {"points", Json::array()},
           {"crossings", Json::array()}};
  for (std::size_t i = 0; i < view.ground.points.size(); ++i) out["points"].push_back(point_json(view, i));
  for (std::size_t i = 0; i < view.crossings.size(); ++i)
    out["crossings"].push_back(crossing_json(view, view.crossings[i], view.names[i]));
  return out;
}

void run(const SectionWords& words, Console& console) {
  const auto site = site_at(words.file, words.phase);
  if (!site) return refuse(site.error(), console);
  const auto line = line_of(words, *site);
  if (!line) return refuse(line.error(), console);
  const DesignSurface surface = design_surface(*site);
  if (const Problems problems = problems_with(*line, surface, words); !problems.empty())
    return refuse(problems, console);
  SectionView view = section_view(*site, surface, line->path, line->along);
  std::string water;
  if (words.storm) {
    auto told = add_storm(view, *site, surface, words.asked);
    if (!told) return refuse(told.error(), console);
    water = std::move(*told);
  }
  if (!words.output.empty()) {
    const SectionTitle title{site->name, line->title, water};
    const auto files = write_pages({section_page(view, title, site->units)}, words.output, site->name);
    if (!files) return refuse(files.error(), console);
  }
  if (console.json) return write_json(section_json(*site, *line, view));
  print_section(*site, *line, view, words);
  if (!water.empty()) fmt::print("\nwater: {}\n", water);
  if (!words.output.empty()) fmt::print("\n{}\n", words.output);
}

}  // namespace

void add_section_verb(CLI::App& program, Console& console) {
  auto words = std::make_shared<SectionWords>();
  CLI::App* verb = program.add_subcommand("section", "cut the ground along a line: levels, and what it crosses");
  verb->footer(
      "examples: yardwright section NAME.yard --line 100,50 100,400 -o section.pdf\n"
      "          yardwright section NAME.yard --along \"East swale\" --storm --return-period 25 --power-fails");
  verb->add_option("SITE", words->file, "the site file, NAME.yard")->required();
  verb->add_option("--line", words->places, "two places or more, east and north of the site's origin: E,N E,N ...")
      ->expected(2, 1000);
  verb->add_option("--along", words->along, "name or number of an item with a line, in the place of --line");
  verb->add_option("--phase", words->phase, "as the yard stands once this phase is built (0: today)");
  add_quantity(*verb, "--every", words->every_m, Quantity::length,
               "a row of the table each; a round step where not given");
  CLI::Option* storm =
      verb->add_flag("--storm", words->storm, "run the storm too and show its deepest water; takes a while");
  add_storm_options(*verb, words->asked, storm);
  verb->add_option("-o,--output", words->output, "draw it into this file: .pdf, .svg or .png");
  verb->callback([words, &console] { run(*words, console); });
}

}  // namespace yardwright::cli
