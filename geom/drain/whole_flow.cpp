#include "geom/drain/whole_flow.hpp"

#include <algorithm>

#include "geom/drain/area_above.hpp"
#include "geom/drain/depressions.hpp"
#include "geom/drain/directions.hpp"
#include "geom/drain/flood.hpp"

namespace yardwright::drain {

Flow dry_flow(const LevelGrid& levels, const FlowOptions& options) {
  Flow flow;
  flow.frame = levels.frame();
  flow.level_m = levels.values();
  flow.sinks = options.sinks;
  std::ranges::sort(flow.sinks);
  flow.sinks.erase(std::ranges::unique(flow.sinks).begin(), flow.sinks.end());
  flow.links = options.links;
  return flow;
}

void run_whole(Flow& flow) {
  const Neighbourhood ways{flow};
  flood(flow, ways);
  find_directions(flow, ways);
  count_above(flow);
  find_depressions(flow, ways);
  const auto cells = static_cast<std::int32_t>(flow.level_m.size());
  flow.work = {cells, cells, cells, cells};
}

}  // namespace yardwright::drain
