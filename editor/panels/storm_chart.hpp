// Below the plan, of a storm through its hours: the water over the floor of every pit with each pit's rim, or what flows
// into pits, in pipes or off the ground; and the moment that the plan shows, which the pointer drags.
#pragma once

#include "editor/canvas/canvas.hpp"
#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

void draw_storm_chart(const Workspace& work, const std::shared_ptr<const session::StormRecord>& record,
                      const canvas::Rect& place);

}  // namespace yardwright::panels
