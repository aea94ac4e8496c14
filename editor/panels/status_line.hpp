// One line over the foot of the plan: what to do with the tool in hand, or the last thing to tell.
#pragma once

#include "editor/canvas/canvas.hpp"
#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

void show_status_line(const Workspace& work, const canvas::Rect& plan, const std::string& being_read);

}  // namespace yardwright::panels
