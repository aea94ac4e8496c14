#include "geom/sheet/storm_tables.hpp"

#include <fmt/format.h>

#include "geom/drain/storm/storm_words.hpp"
#include "geom/sheet/size_words.hpp"
#include "geom/sheet/storm_drawing.hpp"
#include "geom/units/text.hpp"

namespace yardwright {

namespace {

using drain::storm::PipeStory;
using drain::storm::PitStory;
using drain::storm::WallStory;

std::string name_of(const Site& site, ItemId id) {
  const Item* item = find(site, id);
  return item == nullptr ? fmt::format("item {}", id.number) : title_of(*item);
}

std::string when_words(const StormSheet& storm) {
  return fmt::format("Hours {:.1f} to {:.1f} of the 24-hour storm; {}.", storm.story.start_s / 3600,
                     storm.story.end_s / 3600, storm.mishap);
}

Table pit_table(const Site& site, const StormSheet& storm) {
  Table table{"The storm: pits", when_words(storm), {}, {}};
  table.columns = {{"pit", 3},
                   {"floor", 2, Anchor::right},
                   {"rim", 2, Anchor::right},
                   {"highest water", 2, Anchor::right},
                   {"over the rim from", 2, Anchor::right},
                   {"full at", 2, Anchor::right},
                   {"came in", 2, Anchor::right},
                   {"most at once", 2, Anchor::right},
                   {"pumped out", 2, Anchor::right}};
  const auto level = [&](double m) { return TableCell{text_of(m, Quantity::length, site.units)}; };
  const auto volume = [&](double m3) { return TableCell{text_of(m3, Quantity::volume, site.units)}; };
  for (const PitStory& pit : storm.story.pits) {
    table.rows.push_back({{name_of(site, pit.item), true},
                          level(pit.floor_m),
                          level(pit.rim_m),
                          level(pit.highest_m),
                          {drain::storm::hour_words(pit.rim_s, storm.story.end_s)},
                          {drain::storm::hour_words(pit.overflows_s, storm.story.end_s)},
                          volume(pit.in_m3),
                          {text_of(pit.highest_inflow_m3_per_s(), Quantity::flow, site.units)},
                          volume(pit.pumped_m3)});
  }
  return table;
}

Table wall_table(const Site& site, const StormSheet& storm) {
  Table table{"The storm: water against walls", "At the worst place around each.", {}, {}};
  table.columns = {{"wall", 3}, {"deepest", 2, Anchor::right}, {"deeper than an inch for", 2, Anchor::right}};
  for (const WallStory& wall : storm.story.walls) {
    table.rows.push_back({{name_of(site, wall.item), true},
                          {text_of(wall.deepest_m, Quantity::small_length, site.units)},
                          {fmt::format("{:.1f} h", wall.wet_s / 3600)}});
  }
  return table;
}

Table pipe_table(const Site& site, const StormSheet& storm) {
  Table table{
      "The storm: what carried water away", "A pipe by its inlet or its barrel, whichever carries less.", {}, {}};
  table.columns = {{"pipe or grate", 3},
                   {"size", 2},
                   {"most carried", 2, Anchor::right},
                   {"turned water away for", 2, Anchor::right}};
  const drain::storm::StormStory& story = storm.story;
  for (const std::vector<PipeStory>* pipes : {&story.culverts, &story.tiles, &story.grates}) {
    for (const PipeStory& pipe : *pipes) {
      const Item* item = find(site, pipe.item);
      table.rows.push_back({{name_of(site, pipe.item), true},
                            {item == nullptr ? "" : size_words(item->thing, site.units)},
                            {text_of(pipe.highest_m3_per_s, Quantity::flow, site.units)},
                            {pipe.full_s > 0 ? fmt::format("{:.2f} h", pipe.full_s / 3600) : ""}});
    }
  }
  return table;
}

Table water_table(const Site& site, const StormSheet& storm) {
  const drain::storm::WaterBalance& water = storm.story.balance;
  Table table{"The storm: where the water went", "What came is what went and what stands.", {}, {}};
  table.columns = {{"", 4}, {"water", 2, Anchor::right}};
  const auto row = [&](const char* what, double m3) {
    table.rows.push_back({{what}, {text_of(m3, Quantity::volume, site.units)}});
  };
  row("stood in hollows and pits at the beginning", water.stood_m3);
  row("fell as rain", water.rain_m3);
  row("soaked in", water.soaked_m3);
  row("left over the edge of the ground", water.left_m3);
  row("was pumped out of pits", water.pumped_m3);
  row("stands on the ground at the end", water.on_ground_m3);
  row("stands in pits at the end", water.in_pits_m3);
  return table;
}

}  // namespace

std::vector<KeyRow> storm_key(const Site& site, const StormSheet& storm) {
  std::vector<KeyRow> rows;
  for (const double depth_m : {0.03, 0.15, 0.45}) {
    rows.push_back(key_of_area(tint_of_depth(depth_m), {palette::none, 0, {}},
                               "deepest water: " + text_of(depth_m, Quantity::small_length, site.units)));
  }
  rows.push_back(
      {{}, fmt::format("{} of rain in 24 h", short_text_of(site.storm.rain_m, Quantity::rain_depth, site.units))});
  rows.push_back({{}, when_words(storm)});
  return rows;
}

std::vector<Table> storm_tables(const Site& site, const StormSheet& storm) {
  std::vector<Table> tables;
  for (Table table :
       {pit_table(site, storm), pipe_table(site, storm), wall_table(site, storm), water_table(site, storm)})
    if (!table.rows.empty()) tables.push_back(std::move(table));
  return tables;
}

}  // namespace yardwright
