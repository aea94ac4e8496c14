#include "geom/reach/solid.hpp"

#include <algorithm>
#include <cmath>

#include "geom/site/footprint.hpp"

namespace yardwright::reach {

namespace {

/// Wall top and roof point over the ground at the item's place.
struct Heights {
  double eave_m, peak_m;
};

std::optional<Heights> heights_of(const Thing& thing) {
  if (const Bin* bin = std::get_if<Bin>(&thing)) {
    const double eave_m = bin->foundation_height_m + bin->eave_height_m;
    return Heights{eave_m, eave_m + bin->diameter_m / 2 * tan(bin->roof_slope)};
  }
  if (const OverheadHolding* bin = std::get_if<OverheadHolding>(&thing)) {
    const double eave_m = bin->underside_height_m + bin->diameter_m / 2 * tan(bin->hopper_angle) + bin->wall_height_m;
    return Heights{eave_m, eave_m + bin->diameter_m / 2 * tan(bin->roof_slope)};
  }
  if (const Leg* leg = std::get_if<Leg>(&thing)) return Heights{leg->discharge_height_m, leg->discharge_height_m};
  if (const Dryer* dryer = std::get_if<Dryer>(&thing)) return Heights{dryer->height_m, dryer->height_m};
  if (const Building* building = std::get_if<Building>(&thing)) return Heights{building->height_m, building->height_m};
  if (const Receiving* dump = std::get_if<Receiving>(&thing);
      dump != nullptr && dump->type == ReceivingKind::drive_through) {
    return Heights{dump->height_m, dump->height_m};
  }
  return std::nullopt;
}

/// Distance, in a vertical plane, from a point (outside the wall by `out_m`, at `level_m`) to the profile of the
/// wall and the cone that rises inward from its top.
double distance_to_profile(double from_axis_m, double level_m, double radius_m, const Solid& solid) {
  const double below_eave_m = std::clamp(level_m, solid.base_m, solid.eave_m);
  if (from_axis_m <= radius_m && level_m <= solid.eave_m && level_m >= solid.base_m) return 0;
  const double to_wall_m = std::hypot(std::max(from_axis_m - radius_m, 0.0), level_m - below_eave_m);
  const SitePoint here{from_axis_m, level_m};
  const SitePoint eave{radius_m, solid.eave_m}, peak{0, solid.peak_m};
  const bool under_cone = level_m >= solid.eave_m && cross(peak - eave, here - eave) >= 0 && from_axis_m <= radius_m;
  if (under_cone) return 0;
  return std::min(to_wall_m, nearest_on_segment(eave, peak, here).distance_m);
}

double distance_at(SitePoint at, double level_m, const Solid& solid) {
  if (const Disc* disc = std::get_if<Disc>(&solid.outline)) {
    return distance_to_profile(distance(at, disc->centre), level_m, disc->radius_m, solid);
  }
  const double beside_m = nearest_pair(Outline{Disc{at, 0}}, solid.outline).distance_m;
  return std::hypot(beside_m, level_m - std::clamp(level_m, solid.base_m, solid.eave_m));
}

}  // namespace

std::optional<Solid> solid_of(const Item& item, const DesignSurface& surface) {
  const auto heights = heights_of(item.thing);
  const auto outline = footprint(item.thing);
  if (!heights || !outline) return std::nullopt;
  const double ground_m = surface.level_m(place_of(item.thing));
  return Solid{item.id, *outline, ground_m, ground_m + heights->eave_m, ground_m + heights->peak_m};
}

ClearDistance clear_distance(const SpoutLine& line, const Solid& solid) {
  const auto at = [&](double part) { return between(line.from, line.to, part); };
  const auto clear_m = [&](double part) {
    return distance_at(at(part), line.from_level_m - part * line.drop_m(), solid);
  };
  double low = 0, high = 1;
  for (int i = 0; i < 60; ++i) {  // each step keeps two thirds: 60 of them leave 3e-11 of the spout
    const double left = low + (high - low) / 3, right = high - (high - low) / 3;
    (clear_m(left) <= clear_m(right) ? high : low) = clear_m(left) <= clear_m(right) ? right : left;
  }
  return {clear_m(low), at(low)};
}

bool comes_within(const SpoutLine& line, const Solid& solid, double distance_m) {
  const auto clear_m = [&](double part) {
    return distance_at(between(line.from, line.to, part), line.from_level_m - part * line.drop_m(), solid);
  };
  // Along the line the distance changes by no more than the way gone: what is left of the interval can be ruled out.
  const double length_m = line.length_m();
  double low = 0, high = 1;
  for (int i = 0; i < 60; ++i) {
    const double left = low + (high - low) / 3, right = high - (high - low) / 3;
    const double at_left_m = clear_m(left), at_right_m = clear_m(right);
    if (at_left_m < distance_m || at_right_m < distance_m) return true;
    const double third_m = length_m * (high - low) / 3;
    const double between_m = (at_left_m + at_right_m - third_m) / 2;
    if (std::min({at_left_m - third_m, at_right_m - third_m, between_m}) >= distance_m) return false;
    (at_left_m <= at_right_m ? high : low) = at_left_m <= at_right_m ? right : left;
  }
  return false;
}

}  // namespace yardwright::reach
