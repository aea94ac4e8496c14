#include "geom/reach/level.hpp"

#include "geom/site/footprint.hpp"

namespace yardwright::reach {

double outlet_level_m(const Leg& leg, const DesignSurface& surface) {
  return surface.level_m(leg.at) + leg.discharge_height_m - leg.distributor_drop_m;
}

std::optional<double> inlet_height_m(const Thing& thing) {
  if (const Bin* bin = std::get_if<Bin>(&thing)) {
    const double roof_rise_m = bin->diameter_m / 2 * tan(bin->roof_slope);
    return bin->foundation_height_m + bin->eave_height_m + roof_rise_m + bin->inlet_over_peak_m;
  }
  if (const OverheadHolding* bin = std::get_if<OverheadHolding>(&thing)) {
    const double hopper_m = bin->diameter_m / 2 * tan(bin->hopper_angle);
    const double roof_rise_m = bin->diameter_m / 2 * tan(bin->roof_slope);
    return bin->underside_height_m + hopper_m + bin->wall_height_m + roof_rise_m + bin->inlet_over_peak_m;
  }
  if (const Dryer* dryer = std::get_if<Dryer>(&thing)) return dryer->inlet_height_m;
  return std::nullopt;
}

std::optional<double> inlet_level_m(const Thing& thing, const DesignSurface& surface) {
  const auto height_m = inlet_height_m(thing);
  if (!height_m) return std::nullopt;
  return surface.level_m(place_of(thing)) + *height_m;
}

}  // namespace yardwright::reach
