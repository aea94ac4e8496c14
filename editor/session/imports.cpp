#include "editor/session/imports.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>

#include "geom/io/ground_import.hpp"
#include "geom/io/picture_import.hpp"
#include "geom/io/rain_table_file.hpp"
#include "geom/site/footprint.hpp"
#include "geom/site/rain_years.hpp"
#include "geom/units/text.hpp"

namespace yardwright::session {

namespace {

namespace fs = std::filesystem;

double length_of(const std::string& text, const char* where, UnitSystem units, Problems& problems) {
  auto value = parse_quantity(text, Quantity::length, units);
  if (value) return *value;
  value.error().where = where;
  problems.push_back(value.error());
  return 0;
}

int epsg_of(const std::string& text, Problems& problems) {
  int code = 0;
  if (text.empty()) return code;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), code);
  if (error == std::errc{} && end == text.data() + text.size() && code > 0) return code;
  problems.push_back(
      {fmt::format("\"{}\" is no EPSG code", text), "EPSG code", "type a number such as 26915, or leave it empty"});
  return 0;
}

std::optional<MapUnit> unit_of(const std::string& text) {
  const auto names = names_of(MapUnit{});
  const auto at = std::ranges::find(names, text);
  return at == names.end() ? std::nullopt : std::optional{static_cast<MapUnit>(at - names.begin())};
}

Expected<ImportOptions> options_of(const GroundWords& words, UnitSystem units) {
  Problems problems;
  ImportOptions options;
  options.cell_m = length_of(words.cell, "cell size", units, problems);
  options.margin_m = length_of(words.margin, "margin", units, problems);
  options.epsg = epsg_of(words.epsg, problems);
  options.vertical_unit = unit_of(words.level_unit);
  options.plan_unit = unit_of(words.plan_unit);
  options.fill_holes = words.fills_holes;
  if (!problems.empty()) return tl::unexpected{problems};
  return options;
}

std::string told(const ImportedGround& read) {
  const GridFrame& frame = read.ground.levels.frame();
  std::string text =
      fmt::format("The ground is here: {} x {} cells, {}", frame.columns, frame.rows, read.coordinate_system);
  if (read.filled_cells > 0) text += fmt::format(", {} cells filled", read.filled_cells);
  for (const std::string& note : read.notes) text += "; " + note;
  return text + ".";
}

/// "The rain table is here: 10 rows, 1 to 1000 years. The design storm is 7.28 in, once in 10 years."
std::string told(const Storm& storm, UnitSystem units) {
  const auto& rows = storm.table.rows;
  std::string text = fmt::format("The rain table is here: {} rows, {:g} to {:g} years.", rows.size(),
                                 rows.front().years, rows.back().years);
  const std::string rain = text_of(storm.rain_m, Quantity::rain_depth, units);
  if (rain_of_years(storm.table, storm.return_period_years))
    return text + fmt::format(" The design storm is {}, once in {:g} years.", rain, storm.return_period_years);
  return text +
         fmt::format(" It has no row of {:g} years: the design storm keeps its {}.", storm.return_period_years, rain);
}

std::string ending_of(const fs::path& file) {
  std::string ending = file.extension().string();
  std::ranges::transform(ending, ending.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return ending;
}

Box joined(const Box& a, const Box& b) { return box_of({a.low, a.high, b.low, b.high}); }

}  // namespace

namespace {

void take_in_picture(Session& session, const ImportedPicture& read, const std::shared_ptr<BroughtCopy>& copy,
                     const fs::path& file) {
  const Site& site = session.history.settled();
  // It shows what is there today, whatever phase is shown.
  const Item item{next_id(site), file.stem().string(), 0, {}, read.picture};
  const bool placed = read.placing == PicturePlacing::by_coordinates;
  if (copy) session.brought.push_back(copy);
  perform(session, {PutItem{item}});
  take_tool(session, placed ? Tool{} : fit_tool(item.id));
  if (placed) select(session, item.id);
  session.notice = placed ? file.filename().string() + ": " + read.note + "." : "";
  session.look_at = joined(bounds_of(session.site()), box_of(extent(item.thing)));
}

Expected<TakeIn> picture_read(const fs::path& file, const fs::path& site_file, const Site& site) {
  const auto read = import_picture(file, site_file, site);
  if (!read) return tl::unexpected{read.error()};
  const auto copy = read->is_copied ? std::make_shared<BroughtCopy>(site_file.parent_path() / read->picture.file)
                                    : std::shared_ptr<BroughtCopy>{};
  return [read = *read, copy, file](Session& session) { take_in_picture(session, read, copy, file); };
}

Expected<TakeIn> ground_read(const fs::path& file, const Site& site, const ImportOptions& options) {
  const auto read = import_ground(file, site, options);
  if (!read) return tl::unexpected{read.error()};
  return [read = *read](Session& session) {
    perform(session, {SetGround{read.ground, read.tie}});
    session.notice = told(read);
  };
}

}  // namespace

Expected<Reading> picture_reading(const Session& session, const fs::path& file) {
  if (!session.file)
    return refused("is to be kept beside the yard, which has no file yet", file.filename().string(),
                   "save the yard first");
  return [file, site_file = *session.file, site = session.history.settled()] {
    return picture_read(file, site_file, site);
  };
}

Expected<Reading> ground_reading(const Session& session, const fs::path& file, const GroundWords& words) {
  const Site& site = session.history.settled();
  const auto options = options_of(words, site.units);
  if (!options) return tl::unexpected{options.error()};
  return [file, site, options = *options] { return ground_read(file, site, options); };
}

Expected<Reading> rain_reading(const Session&, const fs::path& file) {
  return [file]() -> Expected<TakeIn> {
    const auto table = read_rain_table(file);
    if (!table) return tl::unexpected{table.error()};
    return [table = *table](Session& session) {
      const Storm storm = with_rain_table(session.history.settled().storm, table);
      perform(session, {SetStorm{storm}});
      session.notice = told(storm, session.site().units);
    };
  };
}

tl::expected<void, Problems> read_now(Session& session, const Expected<Reading>& reading) {
  if (!reading) return tl::unexpected{reading.error()};
  const auto take_in = (*reading)();
  if (!take_in) return tl::unexpected{take_in.error()};
  (*take_in)(session);
  return {};
}

bool is_ground_name(const fs::path& file) {
  static constexpr std::array<std::string_view, 7> endings{".tif", ".tiff", ".asc", ".csv", ".txt", ".xyz", ".tsv"};
  return std::ranges::find(endings, ending_of(file)) != endings.end();
}

bool is_rain_name(const fs::path& file) {
  const std::string ending = ending_of(file);
  return ending == ".csv" || ending == ".txt";
}

}  // namespace yardwright::session
