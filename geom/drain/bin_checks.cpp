#include "geom/drain/bin_checks.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geom/drain/pit_water.hpp"
#include "geom/drain/raster.hpp"
#include "geom/drain/yard_flow.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::drain {

namespace {

constexpr double away_m = 3.048;  // the 10 ft over which foundations are asked to fall away
constexpr int ways = 16;

/// The others near enough for water to leave the bin into their wall.
std::vector<Outline> buildings_near(const Site& site, const Item& item, const Bin& bin) {
  const double near_m = bin.diameter_m / 2 + away_m;
  std::vector<Outline> near;
  for (const Item& other : site.items) {
    if (other.id == item.id || !turns_water(other)) continue;
    auto outline = footprint(other.thing);
    if (outline && gap_m(box_of(*outline), {bin.at, bin.at}) <= near_m) near.push_back(std::move(*outline));
  }
  return near;
}

/// From the wall out, in each direction that no other building closes.
std::vector<SitePath> free_ways(const Site& site, const Item& item) {
  const Bin& bin = *as<Bin>(item);
  const std::vector<Outline> buildings = buildings_near(site, item, bin);
  std::vector<SitePath> free;
  for (int i = 0; i < ways; ++i) {
    const SiteVector out = direction(Bearing::degrees(i * 360.0 / ways));
    const SitePoint wall = bin.at + out * (bin.diameter_m / 2), far = wall + out * away_m;
    if (std::ranges::none_of(buildings, [&](const Outline& one) { return contains(one, far); }))
      free.push_back({wall, far});
  }
  return free;
}

void offer_pad(Finding& finding, const Site& site, const Item& item, const DesignSurface& surface) {
  if (finding.verdict == Verdict::pass) return;
  const auto pad = pad_that_falls_away(site, item, surface, finding.required);
  if (!pad) return;
  const Item placed{next_id(site), "Pad of " + title_of(item), item.phase, {}, *pad};
  const double ground_m = surface.level_m(place_of(item.thing));
  finding.mends.push_back({"raise " + title_of(item) + " on a pad",
                           Quantity::length,
                           pad->level_m - ground_m,
                           pad->level_m,
                           {PutItem{placed}}});
}

Finding fall_finding(const Site& site, const Item& item, const Bin& bin, const DesignSurface& surface,
                     const RuleBook& rules) {
  const bool on_slab = bin.floor == BinFloor::flat_channels;
  const char* rule = on_slab ? "drain.slope-away-flat" : "drain.slope-away-raised";
  const FallAway worst = fall_away(site, item, surface);
  if (worst.way.empty()) {
    return not_checked(Question::drain, rule, {item.id}, "The ground around " + title_of(item) + " was not checked",
                       "other buildings stand within 10 ft on every side; check that water can leave between them");
  }
  Finding finding = judged(Question::drain, rules.at(rule), Bound::at_least, worst.grade_ratio, {item.id},
                           on_slab ? Verdict::fail : Verdict::caution);
  finding.title = finding.verdict == Verdict::pass ? "The ground falls away from " + title_of(item)
                                                   : "The ground does not fall away from " + title_of(item);
  finding.note = "worst of sixteen directions, over 10 ft from the wall";
  finding.place = worst.way;
  offer_pad(finding, site, item, surface);
  return finding;
}

/// Full depth of the deepest pond that touches the wall, and where.
struct WaterAtWall {
  double depth_m = 0;
  SitePoint at;
  double level_m = 0;
};

WaterAtWall water_at_wall(const Item& item, const Flow& flow) {
  const std::vector<Cell> covered = cells_in(flow.frame, *footprint(item.thing));
  WaterAtWall deepest{0, place_of(item.thing)};
  for (const Cell cell : with_neighbours(flow.frame, covered)) {
    const auto offset = static_cast<std::size_t>(cell);
    const std::int32_t pond = flow.depression[offset];
    if (pond == no_depression || !worth_showing(flow.depressions[static_cast<std::size_t>(pond)])) continue;
    const double depth_m = static_cast<double>(flow.filled_m[offset]) - flow.level_m[offset];
    if (depth_m > deepest.depth_m)
      deepest = {depth_m, flow.frame.centre(flow.frame.cell_at_offset(offset)), flow.filled_m[offset]};
  }
  return deepest;
}

/// The bin on a pad that stands out of the water but for the depth that is borne; flooded again, since it may turn the
/// water against another wall or dam it higher.
std::optional<Mend> pad_above_water(const Site& site, const Item& item, const Bin& bin, const DesignSurface& surface,
                                    const Flow& flow, const WaterAtWall& water, double borne_m) {
  const double cell_m = surface.existing.frame().cell_m;
  Pad pad;
  pad.outline = disc(bin.at, bin.diameter_m / 2 + 2 * cell_m, 48).outer;
  pad.level_m =
      std::ceil((water.level_m - borne_m) * 1000) / 1000 + 0.001;  // whole millimetres, over the rounding of levels
  const Item placed{next_id(site), "Pad of " + title_of(item), item.phase, {}, pad};
  const Edits edits{PutItem{placed}};
  const Site mended = apply(site, edits);
  if (water_at_wall(item, yard_flow(mended, design_surface(mended), flow)).depth_m > borne_m) return std::nullopt;
  return Mend{"raise " + title_of(item) + " on a pad", Quantity::length, pad.level_m - surface.level_m(bin.at),
              pad.level_m, edits};
}

Finding standing_finding(const Site& site, const Item& item, const Bin& bin, const DesignSurface& surface,
                         const Flow& flow, const RuleBook& rules, MendSearch& search) {
  const WaterAtWall water = water_at_wall(item, flow);
  const Verdict worse = bin.floor == BinFloor::flat_channels ? Verdict::fail : Verdict::caution;
  Finding finding =
      judged(Question::drain, rules.at("drain.water-at-bin"), Bound::at_most, water.depth_m, {item.id}, worse);
  finding.title = finding.verdict == Verdict::pass ? "No water stands against " + title_of(item)
                                                   : "Water can stand against " + title_of(item);
  finding.note = "depth at the wall of the hollow that touches it, when it is full";
  finding.place = {water.at};
  if (finding.verdict == Verdict::pass || !search.may_seek()) return finding;
  if (auto mend = pad_above_water(site, item, bin, surface, flow, water, finding.required))
    finding.mends.push_back(std::move(*mend));
  return finding;
}

}  // namespace

FallAway fall_away(const Site& site, const Item& item, const DesignSurface& surface) {
  FallAway worst;
  for (const SitePath& way : free_ways(site, item)) {
    const double grade = (surface.level_m(way[0]) - surface.level_m(way[1])) / away_m;
    if (worst.way.empty() || grade < worst.grade_ratio) worst = {grade, way};
  }
  return worst;
}

// The pad's side slope meets the worst ground grade * 10 ft * side slope from its edge, well within the 10 ft; where the
// ground lies lower, the side slope itself is steeper than any grade that is asked for.
std::optional<Pad> pad_that_falls_away(const Site& site, const Item& item, const DesignSurface& surface,
                                       double grade_ratio) {
  const Bin& bin = *as<Bin>(item);
  const std::vector<SitePath> ways_out = free_ways(site, item);
  const double cell_m = surface.existing.frame().cell_m;
  Pad pad;
  const double toe_m = 2 * cell_m + grade_ratio * away_m * pad.side_slope_ratio;  // a cell of top and one of blur
  if (ways_out.empty() || toe_m > away_m) return std::nullopt;
  double highest_m = -std::numeric_limits<double>::infinity();
  for (const SitePath& way : ways_out) highest_m = std::max(highest_m, surface.level_m(way[1]));
  pad.outline = disc(bin.at, bin.diameter_m / 2 + cell_m, 48).outer;
  pad.level_m = std::ceil((highest_m + grade_ratio * away_m) * 1000) / 1000 +
                0.001;  // whole millimetres, over the rounding of levels
  return pad;
}

Findings judge_bin(const Site& site, const Item& item, const DesignSurface& surface, const Flow& flow,
                   const RuleBook& rules, MendSearch& search) {
  const Bin& bin = *as<Bin>(item);
  return {fall_finding(site, item, bin, surface, rules),
          standing_finding(site, item, bin, surface, flow, rules, search)};
}

}  // namespace yardwright::drain
