#include "geom/sheet/schedule_tables.hpp"

#include <fmt/format.h>

#include "geom/pace/bin_volume.hpp"
#include "geom/reach/spout_line.hpp"
#include "geom/sheet/size_words.hpp"
#include "geom/site/footprint.hpp"
#include "geom/units/text.hpp"

namespace yardwright {

namespace {

std::string length_text(double metres, UnitSystem units) { return text_of(metres, Quantity::length, units); }

std::vector<TableCell> spout_row(const Site& site, const Item& item, const Spout& spout, const DesignSurface& surface) {
  const Item* from = find(site, spout.from);
  const Item* to = find(site, spout.to);
  const std::string ends = fmt::format("{} to {}", from ? title_of(*from) : "nothing", to ? title_of(*to) : "nothing");
  const std::string grain{names_of(spout.state)[static_cast<std::size_t>(spout.state)]};
  std::vector<TableCell> cells{
      {ends, true}, {grain}, {short_text_of(spout.diameter_m, Quantity::small_length, site.units)}};
  const auto joined = reach::spout_line(site, spout, surface);
  if (!joined) {
    cells.insert(cells.end(), 6, TableCell{"–"});
    cells.back() = {"joins no leg to an inlet: " + title_of(item), false, palette::caution};
    return cells;
  }
  for (const double metres :
       {joined->from_level_m, joined->to_level_m, joined->drop_m(), joined->run_m(), joined->length_m()}) {
    cells.push_back({length_text(metres, site.units)});
  }
  cells.push_back({text_of(joined->slope().as_degrees(), Quantity::angle, site.units), true});
  return cells;
}

Table spout_table(const Site& site, const DesignSurface& surface) {
  Table table{
      "Spouts", "Straight from the distributor's outlet to the inlet; levels above the ground's datum.", {}, {}};
  table.columns = {{"spout", 4},
                   {"grain", 1.2},
                   {"pipe", 1.2},
                   {"outlet level", 1.7, Anchor::right},
                   {"inlet level", 1.7, Anchor::right},
                   {"drop", 1.6, Anchor::right},
                   {"plan run", 1.6, Anchor::right},
                   {"length", 1.6, Anchor::right},
                   {"slope", 1.4, Anchor::right}};
  if (!surface.known()) table.note += " The ground is not known: it is taken as flat at level 0.";
  for_each<Spout>(
      site, [&](const Item& item, const Spout& spout) { table.rows.push_back(spout_row(site, item, spout, surface)); });
  return table;
}

std::string floor_words(const Bin& bin, UnitSystem units) {
  switch (bin.floor) {
    case BinFloor::raised: return "raised " + short_text_of(bin.floor_height_m, Quantity::length, units);
    case BinFloor::hopper: return "hopper " + short_text_of(bin.hopper_angle.as_degrees(), Quantity::angle, units);
    case BinFloor::flat_channels: break;
  }
  return "flat with channels";
}

std::vector<TableCell> bin_row(const Site& site, const Item& item, const Bin& bin, const Catalogs& catalogs) {
  const Grain* grain = find(catalogs.grains, bin.grain);
  const UnitSystem units = site.units;
  return {
      {title_of(item), true},
      {bin.use == BinUse::wet_holding ? "wet holding" : "dry store"},
      {grain ? grain->name : bin.grain},
      {length_text(bin.diameter_m, units)},
      {length_text(bin.eave_height_m, units)},
      {length_text(bin.foundation_height_m, units)},
      {text_of(bin.roof_slope.as_degrees(), Quantity::angle, units)},
      {floor_words(bin, units)},
      {grain ? text_of(pace::heaped(pace::room_of(bin), *grain).total.as_cubic_metres(), Quantity::grain_volume, units)
             : "grain not known",
       grain != nullptr}};
}

Table bin_table(const Site& site, const Catalogs& catalogs) {
  Table table{
      "Bins",
      "Volumes are of the space that grain takes, filled through the peak to its full heap, before any pack factor.",
      {},
      {}};
  table.columns = {{"bin", 3},
                   {"use", 2},
                   {"grain", 2},
                   {"diameter", 1.6, Anchor::right},
                   {"eave", 1.6, Anchor::right},
                   {"foundation", 1.7, Anchor::right},
                   {"roof", 1.3, Anchor::right},
                   {"floor", 2.4},
                   {"holds, heaped", 2, Anchor::right}};
  for_each<Bin>(site,
                [&](const Item& item, const Bin& bin) { table.rows.push_back(bin_row(site, item, bin, catalogs)); });
  return table;
}

std::string phase_words(const Site& site, const Item& item) {
  const auto name = [&](int phase) {
    const auto index = static_cast<std::size_t>(phase);
    return index < site.phases.size() ? site.phases[index] : fmt::format("phase {}", phase);
  };
  std::string words = name(item.phase);
  if (item.gone_in) words += ", gone in " + name(*item.gone_in);
  return words;
}

/// Spouts have no place of their own: they are in the table of spouts.
Table item_table(const Site& site) {
  Table table{"Items",
              "Places are of centres, or the middle of a line, east and north of the plan's origin. Spouts have a "
              "table of their own.",
              {},
              {}};
  table.columns = {{"no.", 0.8},
                   {"item", 3.4},
                   {"kind", 2.2},
                   {"phase", 2},
                   {"size", 4.6},
                   {"east", 1.7, Anchor::right},
                   {"north", 1.7, Anchor::right}};
  for (const Item& item : site.items) {
    if (as<Spout>(item) != nullptr || as<Dimension>(item) != nullptr) continue;
    const SitePoint at = place_of(item.thing);
    table.rows.push_back({{std::to_string(item.id.number), false, palette::quiet_ink},
                          {title_of(item), true},
                          {std::string{kind_label(item.thing)}},
                          {phase_words(site, item)},
                          {size_words(item.thing, site.units)},
                          {length_text(at.x, site.units)},
                          {length_text(at.y, site.units)}});
  }
  return table;
}

}  // namespace

std::vector<Table> schedule_tables(const Site& site, const DesignSurface& surface, const Catalogs& catalogs) {
  std::vector<Table> tables;
  for (Table table : {spout_table(site, surface), bin_table(site, catalogs), item_table(site)}) {
    if (!table.rows.empty()) tables.push_back(std::move(table));
  }
  return tables;
}

}  // namespace yardwright
