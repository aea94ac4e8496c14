#include "geom/drain/pit_water.hpp"

#include <algorithm>
#include <limits>

#include "geom/drain/catchment_water.hpp"
#include "geom/drain/hollows.hpp"
#include "geom/drain/outlines.hpp"
#include "geom/drain/raster.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::drain {

namespace {

std::size_t at(Cell cell) { return static_cast<std::size_t>(cell); }

/// The hole and the cells around it: what runs past the rim.
std::vector<Cell> rim_cells(const Item& item, const GridFrame& frame) {
  std::vector<Cell> cells = cells_in(frame, *pit_hole(item.thing));
  if (const Cell centre = cell_at(frame, place_of(item.thing)); centre != outside) cells.push_back(centre);
  return with_neighbours(frame, cells);
}

/// The deepest pond worth showing that touches the cells.
std::int32_t pond_touching(const Flow& flow, const std::vector<Cell>& cells) {
  std::int32_t deepest = no_depression;
  for (const Cell cell : cells) {
    const std::int32_t number = flow.depression[at(cell)];
    if (number == no_depression || !worth_showing(flow.depressions[static_cast<std::size_t>(number)])) continue;
    if (deepest == no_depression || flow.depressions[static_cast<std::size_t>(number)].spill_level_m >
                                        flow.depressions[static_cast<std::size_t>(deepest)].spill_level_m) {
      deepest = number;
    }
  }
  return deepest;
}

std::vector<Cell> cells_of(const Flow& flow, std::int32_t depression) {
  std::vector<Cell> cells;
  for (std::size_t i = 0; i < flow.depression.size(); ++i) {
    if (flow.depression[i] == depression) cells.push_back(static_cast<Cell>(i));
  }
  return cells;
}

void add_catchment(PitWater& water, const Flow& flow, const CoverMap& covers, const ChannelMap& channels,
                   const std::vector<Cell>& cells, const std::vector<Cell>& outlets, const Storm& storm) {
  const CatchmentWater of = catchment_water(flow, covers, channels, cells, outlets, storm.two_year_rain_m);
  water.catchment_m2 = of.area_m2;
  water.catchment_rings = smooth_rings_around(flow.frame, cells);
  water.longest_way = as_path(flow.frame, of.longest_way);
  water.covers = of.covers;
  water.curve_number = of.curve_number;
  water.rational_c = of.rational_c;
  water.concentration = of.concentration;
}

void add_runoff(PitWater& water, const Storm& storm, const MassCurve& curve) {
  const double concentration_s = water.concentration.total_s();
  water.peak = graphical_peak(water.catchment_m2, water.curve_number, storm.rain_m, concentration_s, storm.type);
  water.runoff_m3 = water.peak.runoff_m * water.catchment_m2;
  if (!curve.known()) return;
  water.rational_peak_m3_per_s = rational_peak_m3_per_s(
      water.rational_c, greatest_intensity_m_per_s(curve, storm.rain_m, concentration_s), water.catchment_m2);
  water.routed_peak =
      peak_of(storm_hydrograph(water.catchment_m2, water.curve_number, storm.rain_m, concentration_s, curve));
}

/// The highest water that stands in a hollow at the rim, once the storm's runoff has come down.
PondAtPit pond_filled(const Flow& flow, std::int32_t number, const std::vector<Cell>& catchment,
                      const std::vector<Cell>& rim, double runoff_m) {
  const Depression& pond = flow.depressions[static_cast<std::size_t>(number)];
  Hollows hollows{flow, number};
  hollows.rain_on(catchment, runoff_m);
  PondAtPit at_pit{number, -std::numeric_limits<double>::infinity(), pond.spill_level_m, pond.volume_m3};
  for (const Cell cell : rim) {
    if (flow.depression[at(cell)] == number) at_pit.level_m = std::max(at_pit.level_m, hollows.level_m(cell));
  }
  return at_pit;
}

}  // namespace

bool worth_showing(const Depression& depression) {
  return depression.depth_m >= least_pond_depth_m && depression.volume_m3 >= least_pond_volume_m3;
}

std::vector<Cell> catchment_of_pit(const Item& item, const Flow& flow) {
  if (pit_body(item.thing) == nullptr || cell_at(flow.frame, place_of(item.thing)) == outside) return {};
  const std::vector<Cell> rim = rim_cells(item, flow.frame);
  const std::int32_t pond = pond_touching(flow, rim);
  return catchment(flow, pond == no_depression ? rim : cells_of(flow, pond));
}

std::optional<PitWater> pit_water(const Item& item, const DesignSurface& surface, const Flow& flow,
                                  const CoverMap& covers, const ChannelMap& channels, const Storm& storm,
                                  const MassCurve& curve) {
  const PitBody* body = pit_body(item.thing);
  const SitePoint place = place_of(item.thing);
  if (body == nullptr || cell_at(flow.frame, place) == outside) return std::nullopt;
  PitWater water{item.id, place};
  water.ground_level_m = surface.level_m(place);
  water.rim_level_m = water.ground_level_m + body->rim_height_m;
  const std::vector<Cell> rim = rim_cells(item, flow.frame);
  const std::int32_t pond = pond_touching(flow, rim);
  const std::vector<Cell> outlets = pond == no_depression ? rim : cells_of(flow, pond);
  const std::vector<Cell> cells = catchment(flow, outlets);
  add_catchment(water, flow, covers, channels, cells, outlets, storm);
  add_runoff(water, storm, curve);
  if (pond == no_depression) return water;
  const auto pond_of = [&](double runoff_m) { return pond_filled(flow, pond, cells, rim, runoff_m); };
  water.pond = pond_of(water.peak.runoff_m);
  if (storm.table.known())
    water.over_rim = recurrence_of(storm.table, [&](double rain_m) {
      return pond_of(runoff_depth_m(rain_m, water.curve_number)).level_m > water.rim_level_m;
    });
  return water;
}

}  // namespace yardwright::drain
