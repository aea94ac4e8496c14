#include "geom/ground/line_crossings.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "geom/shape/overloaded.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright {

namespace {

constexpr double least_stretch_m = 1e-6;

/// The shares of a leg at which it crosses an edge; both its ends are among them.
using Shares = std::vector<double>;

void add_crossing(Shares& shares, SitePoint from, SiteVector leg, SitePoint corner, SitePoint next) {
  const SiteVector edge = next - corner;
  const double turn = cross(leg, edge);
  if (turn == 0) return;
  const double on_leg = cross(corner - from, edge) / turn, on_edge = cross(corner - from, leg) / turn;
  if (on_leg > 0 && on_leg < 1 && on_edge >= 0 && on_edge <= 1) shares.push_back(on_leg);
}

void add_crossings(Shares& shares, SitePoint from, SiteVector leg, const Polygon& polygon) {
  for (std::size_t i = 0; i < polygon.outer.size(); ++i)
    add_crossing(shares, from, leg, polygon.outer[i], polygon.outer[(i + 1) % polygon.outer.size()]);
}

/// |from + s leg - centre| = radius, solved for s.
void add_crossings(Shares& shares, SitePoint from, SiteVector leg, const Disc& disc) {
  const SiteVector out = from - disc.centre;
  const double half = dot(out, leg) / dot(leg, leg);
  const double beyond = half * half - (dot(out, out) - disc.radius_m * disc.radius_m) / dot(leg, leg);
  if (beyond <= 0) return;
  for (const double share : {-half - std::sqrt(beyond), -half + std::sqrt(beyond)})
    if (share > 0 && share < 1) shares.push_back(share);
}

void add_stretch(std::vector<Stretch>& stretches, Stretch stretch) {
  if (stretch.to_m - stretch.from_m < least_stretch_m) return;
  if (!stretches.empty() && stretch.from_m - stretches.back().to_m < least_stretch_m)
    stretches.back().to_m = stretch.to_m;
  else
    stretches.push_back(stretch);
}

/// Part of a thing that a line can cross: its outline, and whether it lies in the ground.
struct Part {
  Outline outline;
  bool is_below = false;
  bool is_pit = false;
};

Outline strip_around(const SitePath& path, double width_m) {
  const Region region = strip(path, width_m);
  return region.empty() ? Polygon{path, {}} : region.front();
}

/// Its body first, then the hole of its pit where that is not its body.
std::vector<Part> parts_of(const Thing& thing) {
  const auto body = std::visit(Overloaded{
                                   [](const Cover&) { return std::vector<Part>{}; },
                                   [](const Route&) { return std::vector<Part>{}; },
                                   [](const Spout&) { return std::vector<Part>{}; },
                                   [](const Picture&) { return std::vector<Part>{}; },
                                   [](const Dimension&) { return std::vector<Part>{}; },
                                   [](const Pit&) { return std::vector<Part>{}; },
                                   [](const Culvert& culvert) {
                                     return std::vector{Part{strip_around(culvert.path, culvert.diameter_m), true}};
                                   },
                                   [](const Tunnel& tunnel) {
                                     return std::vector{Part{strip_around(tunnel.path, tunnel.width_m), true}};
                                   },
                                   [&](const Tank& tank) {
                                     return std::vector{Part{extent(thing), tank.underground}};
                                   },
                                   [&](const auto&) { return std::vector{Part{extent(thing)}}; },
                               },
                               thing);
  std::vector<Part> parts = body;
  if (const auto hole = pit_hole(thing)) parts.push_back({*hole, true, true});
  return parts;
}

/// How far along a path its nearest point lies, from 0 to 1.
double share_along(const SitePath& path, SitePoint at) { return nearest_on_path(path, at).station_m / length(path); }

LevelRange standing(double ground_m, double height_m) { return {ground_m, ground_m + height_m}; }

/// Between two levels that stand under its two ends.
double lerped_m(const SitePath& path, SitePoint at, double start_m, double end_m) {
  return std::lerp(start_m, end_m, share_along(path, at));
}

double height_m(const Bin& bin) {
  return bin.foundation_height_m + bin.eave_height_m + bin.diameter_m / 2 * tan(bin.roof_slope) + bin.inlet_over_peak_m;
}

double height_m(const OverheadHolding& bin) {
  return bin.underside_height_m + bin.diameter_m / 2 * (tan(bin.hopper_angle) + tan(bin.roof_slope)) +
         bin.wall_height_m + bin.inlet_over_peak_m;
}

using Known = std::optional<LevelRange>;

/// The levels of what stands on the ground at its middle.
Known levels_of_body(const Thing& thing, double ground_m) {
  return std::visit(
      Overloaded{
          [&](const Bin& bin) { return Known{standing(ground_m, height_m(bin))}; },
          [&](const OverheadHolding& bin) { return Known{standing(ground_m, height_m(bin))}; },
          [&](const Leg& leg) { return Known{standing(ground_m, leg.discharge_height_m)}; },
          [&](const Dryer& dryer) { return Known{standing(ground_m, dryer.height_m)}; },
          [&](const Receiving& dump) { return Known{standing(ground_m, dump.height_m)}; },
          [&](const Building& building) { return Known{standing(ground_m, building.height_m)}; },
          [&](const Tank& tank) { return tank.underground ? Known{} : Known{standing(ground_m, tank.diameter_m)}; },
          [](const auto&) { return Known{}; },
      },
      thing);
}

/// The levels of what runs along its own path, at a place of the section.
Known levels_of_run(const Thing& thing, const DesignSurface& surface, SitePoint at) {
  const auto level_m = [&](SitePoint place) { return surface.level_m(place); };
  if (const Culvert* culvert = std::get_if<Culvert>(&thing)) {
    const double invert_m = lerped_m(culvert->path, at, level_m(culvert->path.front()) - culvert->start_depth_m,
                                     level_m(culvert->path.back()) - culvert->end_depth_m);
    return standing(invert_m, culvert->diameter_m);
  }
  if (const Tunnel* tunnel = std::get_if<Tunnel>(&thing))
    return standing(level_m(tunnel->path.front()) - tunnel->sill_depth_m, tunnel->height_m);
  if (const Conveyor* conveyor = std::get_if<Conveyor>(&thing)) {
    return standing(lerped_m(conveyor->path, at, level_m(conveyor->path.front()) + conveyor->start_height_m,
                             level_m(conveyor->path.back()) + conveyor->end_height_m),
                    0);
  }
  if (const OverheadLine* wires = std::get_if<OverheadLine>(&thing))
    return standing(level_m(at) + wires->lowest_conductor_m, 0);
  return std::nullopt;
}

Known levels_of(const Thing& thing, const Part& part, const DesignSurface& surface, SitePoint at) {
  if (!surface.known()) return std::nullopt;
  if (path_of(thing) != nullptr) return levels_of_run(thing, surface, at);
  const double ground_m = surface.level_m(place_of(thing));
  if (!part.is_below) return levels_of_body(thing, ground_m);
  const PitBody* pit = pit_body(thing);
  if (pit == nullptr) return std::nullopt;
  return LevelRange{ground_m - pit->depth_m, ground_m + pit->rim_height_m};
}

bool has_length(const Thing& thing) {
  const SitePath* path = path_of(thing);
  return path == nullptr || (path->size() > 1 && length(*path) > 0);
}

}  // namespace

std::vector<Stretch> stretches_inside(const SitePath& path, const Outline& outline) {
  std::vector<Stretch> stretches;
  double start_m = 0;
  for (std::size_t i = 1; i < path.size(); ++i) {
    const SiteVector leg = path[i] - path[i - 1];
    const double leg_m = length(leg);
    if (leg_m == 0) continue;
    Shares shares{0, 1};
    std::visit([&](const auto& shape) { add_crossings(shares, path[i - 1], leg, shape); }, outline);
    std::ranges::sort(shares);
    for (std::size_t s = 1; s < shares.size(); ++s) {
      if (contains(outline, path[i - 1] + leg * std::midpoint(shares[s - 1], shares[s])))
        add_stretch(stretches, {start_m + leg_m * shares[s - 1], start_m + leg_m * shares[s]});
    }
    start_m += leg_m;
  }
  return stretches;
}

std::vector<LineCrossing> line_crossings(const Site& site, const DesignSurface& surface, const SitePath& path,
                                         ItemId along) {
  std::vector<LineCrossing> crossings;
  if (!(length(path) > 0)) return crossings;
  for (const Item& item : site.items) {
    if (!has_length(item.thing)) continue;
    for (const Part& part : parts_of(item.thing)) {
      for (const Stretch& stretch : stretches_inside(path, part.outline)) {
        const Known from = levels_of(item.thing, part, surface, pose_at(path, stretch.from_m).at);
        const Known to = levels_of(item.thing, part, surface, pose_at(path, stretch.to_m).at);
        if (item.id == along && !from) continue;
        crossings.push_back({item.id, stretch.from_m, stretch.to_m, from, to, part.is_below, part.is_pit});
      }
    }
  }
  std::ranges::stable_sort(crossings, {}, &LineCrossing::from_m);
  return crossings;
}

}  // namespace yardwright
