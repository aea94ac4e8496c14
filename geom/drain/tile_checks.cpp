#include "geom/drain/tile_checks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "geom/drain/channel.hpp"
#include "geom/drain/yard_flow.hpp"
#include "geom/shape/outline.hpp"
#include "geom/site/footprint.hpp"
#include "geom/units/text.hpp"

namespace yardwright::drain {

namespace {

// Nominal inside diameters of corrugated plastic drain pipe, inches (AASHTO M 252 and M 294, from memory).
constexpr std::array sold_sizes_in{3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 18.0, 24.0, 30.0, 36.0, 42.0, 48.0, 60.0};
constexpr double inch_m = 0.0254;
constexpr double roof_c = 0.95;  // HEC-22 4th ed., table of rational C: roofs 0.75 to 0.95 (read), the wetter end

UniformFlow full_flow(const TilePipe& pipe) {
  const double slope = pipe.length_m > 0 ? (pipe.start_invert_m - pipe.end_invert_m) / pipe.length_m : 0;
  return flow_at_depth(Pipe{pipe.diameter_m, slope, pipe.roughness_n}, pipe.diameter_m);
}

void add(TileRunoff& line, double runoff_area_m2, double time_s) {
  line.runoff_area_m2 += runoff_area_m2;
  line.time_s = std::max(line.time_s, time_s);
}

double plan_area_m2(const Item& roof) {
  const auto outline = footprint(roof.thing);
  return outline ? area_m2(as_polygon(*outline, 256)) : 0;
}

double through_pipe_s(const TilePipe& pipe) {
  const UniformFlow full = full_flow(pipe);
  return full.state == FlowState::steady ? pipe.length_m / full.speed_m_per_s : 0;
}

void offer_size(Finding& finding, const Item& item, const TilePipe& pipe, double flow_m3_per_s) {
  const auto diameter_m = least_tile_diameter_m(pipe, flow_m3_per_s);
  if (finding.verdict == Verdict::pass || !diameter_m) return;
  Item larger = item;
  std::get<TileLine>(larger.thing).diameter_m = *diameter_m;
  finding.mends.push_back({"a larger pipe for " + title_of(item),
                           Quantity::small_length,
                           *diameter_m - pipe.diameter_m,
                           *diameter_m,
                           {PutItem{larger}}});
}

Finding judge_tile(const Site& site, const Item& item, const TilePipe& pipe, const TileRunoff& runoff,
                   const MassCurve& curve, const RuleBook& rules) {
  const double flow = greatest_intensity_m_per_s(curve, site.storm.rain_m, runoff.time_s) * runoff.runoff_area_m2;
  const double carries = carries_full_m3_per_s(pipe);
  const Rule& rule = rules.at("drain.tile-size");
  Finding finding = judged(Question::drain, rule, Bound::at_least, flow > 0 ? carries / flow : rule.value, {item.id},
                           Verdict::caution);
  finding.title = finding.verdict == Verdict::pass ? title_of(item) + " is large enough for the storm"
                                                   : title_of(item) + " is too small for the storm";
  const auto words = [&](double m3_per_s) { return text_of(m3_per_s, Quantity::flow, site.units); };
  finding.note = carries > 0
                     ? fmt::format("{} come to it, and it carries {} full on its slope", words(flow), words(carries))
                     : fmt::format("{} come to it, and it does not fall: give it a slope", words(flow));
  finding.place = *path_of(item.thing);
  offer_size(finding, item, pipe, rule.value * flow);
  return finding;
}

}  // namespace

std::vector<TileRunoff> tile_runoff(const Site& site, const TileSystem& tiles, const Flow& flow, const CoverMap& covers,
                                    const ChannelMap& channels) {
  std::vector<TileRunoff> runoff(tiles.lines.size());
  const LevelGrid levels{flow.frame, flow.level_m};
  for (const TileInlet& inlet : tiles.inlets) {
    const std::vector<Cell> cells = inlet_cells(levels, inlet.along);
    const CatchmentWater water =
        catchment_water(flow, covers, channels, catchment(flow, cells), cells, site.storm.two_year_rain_m);
    add(runoff[inlet.line], water.area_m2 * water.rational_c, water.concentration.total_s());
  }
  for (const TileRoof& roof : tiles.roofs)
    add(runoff[roof.line], plan_area_m2(*find(site, roof.roof)) * roof.share_ratio * roof_c, 0);
  for (std::size_t i = 0; i < runoff.size(); ++i) {
    const TileRun& line = tiles.lines[i];
    if (line.end == TileEnd::line)
      add(runoff[line.line], runoff[i].runoff_area_m2, runoff[i].time_s + through_pipe_s(line.pipe));
  }
  return runoff;
}

double carries_full_m3_per_s(const TilePipe& pipe) { return full_flow(pipe).flow_m3_per_s; }

std::optional<double> least_tile_diameter_m(const TilePipe& pipe, double flow_m3_per_s) {
  for (const double size_in : sold_sizes_in) {
    TilePipe sold = pipe;
    sold.diameter_m = size_in * inch_m;
    if (sold.diameter_m > pipe.diameter_m && carries_full_m3_per_s(sold) >= flow_m3_per_s) return sold.diameter_m;
  }
  return std::nullopt;
}

Findings judge_tiles(const Site& site, const TileSystem& tiles, const std::vector<TileRunoff>& runoff,
                     const MassCurve& curve, const RuleBook& rules) {
  Findings findings;
  const Rule& rule = rules.at("drain.tile-size");
  for (std::size_t i = 0; i < tiles.lines.size(); ++i) {
    const Item& item = *find(site, tiles.lines[i].item);
    const std::string title = "The size of " + title_of(item) + " was not checked";
    if (runoff[i].runoff_area_m2 <= 0)
      findings.push_back(not_checked(Question::drain, rule, Bound::at_least, {item.id}, title,
                                     "no catch basin, trench drain, downspout or other line runs into it"));
    else if (!curve.known())
      findings.push_back(not_checked(Question::drain, rule, Bound::at_least, {item.id}, title,
                                     "how the storm's rain falls is not known"));
    else
      findings.push_back(judge_tile(site, item, tiles.lines[i].pipe, runoff[i], curve, rules));
  }
  return findings;
}

}  // namespace yardwright::drain
