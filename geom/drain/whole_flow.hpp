// The parts of flow_over, for those who may yet spare the second.
#pragma once

#include "geom/drain/flow.hpp"

namespace yardwright::drain {

/// What is known before any water runs: frame, levels, sinks and links.
Flow dry_flow(const LevelGrid& levels, const FlowOptions& options);

/// All that follows from it.
void run_whole(Flow& flow);

}  // namespace yardwright::drain
