#include "geom/drain/storm/standing_water.hpp"

#include <algorithm>

#include "geom/drain/hollows.hpp"
#include "geom/drain/pit_water.hpp"

namespace yardwright::drain::storm {

std::vector<float> standing_water_m(const Flow& flow, const StormGround& ground, std::span<const double> run_off_m) {
  std::vector<float> depths_m(flow.level_m.size(), 0.0F);
  const auto cells = cells_by_depression(flow);
  const std::size_t kinds = run_off_m.size();
  for (std::size_t number = 0; number < flow.depressions.size(); ++number) {
    if (!worth_showing(flow.depressions[number])) continue;
    const std::vector<Cell> above = catchment(flow, cells[number]);
    double sum_m = 0;
    for (const Cell cell : above) {
      const std::size_t kind = ground.kind[static_cast<std::size_t>(cell)];
      sum_m += kind < kinds ? run_off_m[kind] : 0;
    }
    if (sum_m <= 0) continue;
    Hollows hollows{flow, static_cast<std::int32_t>(number)};
    hollows.rain_on(above, sum_m / static_cast<double>(above.size()));
    for (const Cell cell : cells[number]) {
      const auto at = static_cast<std::size_t>(cell);
      if (ground.kind[at] >= kinds) continue;
      depths_m[at] = static_cast<float>(std::max(0.0, hollows.level_m(cell) - static_cast<double>(flow.level_m[at])));
    }
  }
  return depths_m;
}

}  // namespace yardwright::drain::storm
