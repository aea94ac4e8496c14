#include "geom/sheet/drain_tables.hpp"

#include <fmt/format.h>

#include <cmath>

#include "geom/drain/channel.hpp"
#include "geom/drain/tile_lines.hpp"
#include "geom/ground/earth_balance.hpp"
#include "geom/sheet/catchment_tables.hpp"
#include "geom/sheet/size_words.hpp"
#include "geom/units/text.hpp"

namespace yardwright {

namespace {

class Words {
 public:
  explicit Words(const Site& site) : site_{site} {}

  std::string name(ItemId id) const {
    const Item* item = find(site_, id);
    return item == nullptr ? fmt::format("item {}", id.number) : title_of(*item);
  }
  std::string length(double m) const { return text_of(m, Quantity::length, site_.units); }
  std::string volume(double m3) const { return text_of(m3, Quantity::volume, site_.units); }
  std::string flow(double m3_per_s) const { return text_of(m3_per_s, Quantity::flow, site_.units); }
  std::string text(double si, Quantity quantity) const { return text_of(si, quantity, site_.units); }

 private:
  const Site& site_;
};

std::string rim_words(const drain::PitWater& pit, const Words& words) {
  if (!pit.pond) return "no pond";
  const double over_m = pit.pond->level_m - pit.rim_level_m;
  return fmt::format("{} {}", words.length(std::abs(over_m)), over_m > 0 ? "over" : "under");
}

std::vector<TableCell> pit_row(const drain::PitWater& pit, const Words& words, double yard_life_years) {
  const bool has_peak = pit.peak.state == drain::PeakState::computed;
  return {{words.name(pit.item), true},
          {words.text(pit.catchment_m2, Quantity::area)},
          {fmt::format("{:.0f}", pit.curve_number)},
          {fmt::format("{:.0f} min", pit.concentration.total_s() / 60)},
          {words.volume(pit.runoff_m3)},
          {has_peak ? words.flow(pit.peak.peak_m3_per_s) : "–"},
          {pit.rational_peak_m3_per_s ? words.flow(*pit.rational_peak_m3_per_s) : "–"},
          {pit.routed_peak ? words.flow(pit.routed_peak->flow_m3_per_s) : "–"},
          {rim_words(pit, words)},
          {pit.over_rim ? drain::recurrence_words(*pit.over_rim, yard_life_years) : "–"}};
}

Table pit_table(const Site& site, const drain::Answer& answer, const Words& words) {
  Table table{
      "Drainage: what the storm brings to each pit",
      fmt::format("{} of rain in 24 hours, type {}. Peaks by TR-55, the rational method and the unit hydrograph.",
                  words.text(site.storm.rain_m, Quantity::rain_depth),
                  names_of(site.storm.type)[static_cast<std::size_t>(site.storm.type)]),
      {},
      {}};
  table.columns = {{"pit", 2.2},
                   {"catchment", 1.6, Anchor::right},
                   {"CN", 0.7, Anchor::right},
                   {"Tc", 1.1, Anchor::right},
                   {"runoff", 1.6, Anchor::right},
                   {"peak, TR-55", 1.5, Anchor::right},
                   {"rational", 1.5, Anchor::right},
                   {"hydrograph", 1.5, Anchor::right},
                   {"pond at its rim", 1.8, Anchor::right},
                   {"water reaches its rim", 3}};
  for (const drain::PitWater& pit : answer.pits) table.rows.push_back(pit_row(pit, words, site.storm.yard_life_years));
  return table;
}

struct PipeLine {
  std::string name;
  double diameter_m, length_m, start_invert_m, end_invert_m, roughness_n;
  std::string outlet;
};

std::vector<TableCell> pipe_row(const PipeLine& pipe, const Words& words) {
  const double slope = pipe.length_m > 0 ? (pipe.start_invert_m - pipe.end_invert_m) / pipe.length_m : 0;
  const drain::UniformFlow full =
      drain::flow_at_depth(drain::Pipe{pipe.diameter_m, slope, pipe.roughness_n}, pipe.diameter_m);
  const bool falls = full.state == drain::FlowState::steady;
  return {{pipe.name, true},
          {words.text(pipe.diameter_m, Quantity::small_length)},
          {words.length(pipe.length_m)},
          {words.length(pipe.start_invert_m)},
          {words.length(pipe.end_invert_m)},
          {words.text(slope, Quantity::grade)},
          {falls ? words.flow(full.flow_m3_per_s) : "none: it does not fall"},
          {falls ? words.text(full.speed_m_per_s, Quantity::speed) : "–"},
          {pipe.outlet}};
}

std::string outlet_words(const drain::TileRun& run, const Words& words) {
  if (run.end == drain::TileEnd::ground) return "onto the ground";
  return run.end == drain::TileEnd::beyond ? "off the known ground" : "into " + words.name(run.into);
}

Table pipe_table(const Site& site, const DesignSurface& surface, const drain::TileSystem& tiles, const Words& words) {
  Table table{"Drainage: pipes", "Carried full, by Manning on the pipe's own slope.", {}, {}};
  table.columns = {{"pipe", 2.2},
                   {"size", 1.1, Anchor::right},
                   {"length", 1.3, Anchor::right},
                   {"invert at start", 1.5, Anchor::right},
                   {"invert at end", 1.5, Anchor::right},
                   {"slope", 1, Anchor::right},
                   {"carries full", 1.7, Anchor::right},
                   {"speed full", 1.3, Anchor::right},
                   {"outlet", 2.2}};
  for_each<Culvert>(site, [&](const Item& item, const Culvert& culvert) {
    if (culvert.path.size() < 2) return;
    table.rows.push_back(
        pipe_row({title_of(item), culvert.diameter_m, length(culvert.path),
                  surface.level_m(culvert.path.front()) - culvert.start_depth_m,
                  surface.level_m(culvert.path.back()) - culvert.end_depth_m, culvert.roughness_n, "onto the ground"},
                 words));
  });
  for (const drain::TileRun& run : tiles.lines)
    table.rows.push_back(
        pipe_row({words.name(run.item), run.pipe.diameter_m, run.pipe.length_m, run.pipe.start_invert_m,
                  run.pipe.end_invert_m, run.pipe.roughness_n, outlet_words(run, words)},
                 words));
  return table;
}

Table inlet_table(const Site& site, const DesignSurface& surface, const drain::TileSystem& tiles, const Words& words) {
  Table table{"Drainage: inlets", "What stands over a grate before it takes so much is told by the storm.", {}, {}};
  table.columns = {{"inlet", 2.2}, {"grate", 2}, {"level of its grate", 1.6, Anchor::right}, {"runs into", 2.2}};
  for (const drain::TileInlet& inlet : tiles.inlets) {
    const Item* item = find(site, inlet.item);
    table.rows.push_back({{title_of(*item), true},
                          {size_words(item->thing, site.units)},
                          {words.length(surface.level_m(inlet.along.front()))},
                          {words.name(tiles.lines[inlet.line].item)}});
  }
  return table;
}

Table earth_table(const Site& site, const DesignSurface& surface, const Words& words) {
  const EarthBalance balance = earth_balance(site, surface);
  Table table{
      "Earthwork",
      fmt::format("Shrink {:.0f} %, swell {:.0f} %.", 100 * site.ground.shrink_ratio, 100 * site.ground.swell_ratio),
      {},
      {}};
  table.columns = {{"", 4}, {"earth", 2, Anchor::right}};
  if (balance.earth.cut_m3 + balance.earth.fill_m3 <= 0) return table;
  const auto row = [&](const char* what, double m3) { table.rows.push_back({{what}, {words.volume(m3)}}); };
  row("cut, in place", balance.earth.cut_m3);
  row("fill, in place", balance.earth.fill_m3);
  row("fill that the cut makes, rolled", balance.made_of_cut_m3);
  row(balance.left_over_m3() < 0 ? "fill that must be brought" : "fill left over", std::abs(balance.left_over_m3()));
  row("the cut, loaded loose", balance.loose_m3);
  return table;
}

}  // namespace

std::vector<Table> drain_tables(const Site& site, const DesignSurface& surface, const drain::Answer& answer,
                                const Catalogs& catalogs) {
  if (!surface.known()) return {};
  const Words words{site};
  const drain::TileSystem tiles = drain::tile_system(site, surface);
  std::vector<Table> tables;
  const auto pipes = drain::pipe_catchments(site, surface, catalogs, answer.flow);
  for (Table table : {pit_table(site, answer, words), travel_table(site, answer, pipes),
                      cover_table(site, answer, pipes), pipe_table(site, surface, tiles, words),
                      inlet_table(site, surface, tiles, words), earth_table(site, surface, words)})
    if (!table.rows.empty()) tables.push_back(std::move(table));
  return tables;
}

}  // namespace yardwright
