#include <algorithm>
#include <cmath>

#include "geom/drain/pit_water.hpp"
#include "geom/grow/keep_off.hpp"
#include "geom/grow/region_where.hpp"

namespace yardwright::grow {

namespace {

constexpr double fall_samples_m = 2.0;
constexpr int ways = 16;

/// A cell of water counts at a wall that stands in it or in a cell beside it.
constexpr double cells_aside = 1.5;

/// The cells of the grid that hold the lot, as samples at their own centres.
GridFrame cells_of_lot(const GridFrame& frame, const Lot& lot) {
  const Box box = box_of(lot.corners);
  const CellIndex low = frame.cell_of(box.low), high = frame.cell_of(box.high);
  const int west = std::clamp(low.column - 1, 0, frame.columns), east = std::clamp(high.column + 2, 0, frame.columns);
  const int south = std::clamp(low.row - 1, 0, frame.rows), north = std::clamp(high.row + 2, 0, frame.rows);
  return {frame.south_west + SiteVector{west * frame.cell_m, south * frame.cell_m}, frame.cell_m, east - west,
          north - south};
}

double depth_m(const drain::Flow& flow, SitePoint at) {
  const CellIndex cell = flow.frame.cell_of(at);
  if (!flow.frame.contains(cell)) return 0;
  const std::size_t offset = flow.frame.offset(cell);
  const std::int32_t hollow = flow.depression[offset];
  if (hollow == drain::no_depression) return 0;
  if (!drain::worth_showing(flow.depressions[static_cast<std::size_t>(hollow)])) return 0;
  return double(flow.filled_m[offset]) - flow.level_m[offset];
}

void off_standing_water(KeepOffs& all, const Newcomer& newcomer) {
  const drain::Flow& flow = newcomer.answers.drain->flow;
  if (flow.depression.empty()) return;
  const Rule& rule = newcomer.rules.at("drain.water-at-bin");
  const Region wet = region_where(cells_of_lot(flow.frame, newcomer.site.lot),
                                  [&](SitePoint at) { return depth_m(flow, at) > rule.value; });
  if (wet.empty()) return;
  const double aside_m = cells_aside * flow.frame.cell_m;
  const Disc* disc = std::get_if<Disc>(&newcomer.behind);
  all.push_back({rule.id,
                 {},
                 "stands in water after the storm",
                 rule.value,
                 Verdict::caution,
                 disc != nullptr ? offset(wet, disc->radius_m + aside_m, 48)
                                 : united(pieces_grown_by(wet, newcomer.behind, aside_m))});
}

/// Around the edge of what the newcomer covers, and its middle.
std::vector<SiteVector> looked_at(const Outline& shape) {
  std::vector<SiteVector> points{{0, 0}};
  if (const Disc* disc = std::get_if<Disc>(&shape)) {
    for (int i = 0; i < ways; ++i)
      points.push_back((disc->centre - SitePoint{}) + direction(Bearing::degrees(i * 360.0 / ways)) * disc->radius_m);
  } else {
    for (const SitePoint& corner : std::get<Polygon>(shape).outer) points.push_back(corner - SitePoint{});
  }
  return points;
}

void off_steep_ground(KeepOffs& all, const Newcomer& newcomer) {
  const DesignSurface& surface = newcomer.answers.surface;
  if (!surface.known()) return;
  const Rule& rule = newcomer.rules.at("grow.fall-across");
  const std::vector<SiteVector> points = looked_at(newcomer.shape);
  const auto falls_too_much = [&](SitePoint at) {
    double low_m = surface.level_m(at), high_m = low_m;
    for (const SiteVector& point : points) {
      const double level_m = surface.level_m(at + point);
      low_m = std::min(low_m, level_m);
      high_m = std::max(high_m, level_m);
    }
    return high_m - low_m > rule.value;
  };
  Region steep = region_where(samples_over(box_of(newcomer.site.lot.corners), fall_samples_m), falls_too_much);
  if (!steep.empty())
    all.push_back({rule.id,
                   {},
                   "stands where the ground falls too much across it",
                   rule.value,
                   Verdict::caution,
                   std::move(steep)});
}

}  // namespace

KeepOffs off_wet_and_steep_ground(const Newcomer& newcomer) {
  KeepOffs all;
  off_standing_water(all, newcomer);
  off_steep_ground(all, newcomer);
  return all;
}

}  // namespace yardwright::grow
