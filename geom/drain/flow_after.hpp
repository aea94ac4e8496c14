// The flow after an edit, from the flow before it: the same bits as flow_over gives, but only what the edit can reach is
// found anew, and the rest is copied. Page: docs/methods/drain.md.
#pragma once

#include "geom/drain/flow.hpp"

namespace yardwright::drain {

/// `before` may be of any ground; where it is of another frame, or the edit reaches far, the whole is found anew.
Flow flow_after(const Flow& before, const LevelGrid& levels, const FlowOptions& options = {});

}  // namespace yardwright::drain
