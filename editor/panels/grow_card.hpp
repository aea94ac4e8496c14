// Grow's own part of the right side: what is sought room for, its best spots, how many fit, and what taller legs gain.
#pragma once

#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

void show_grow_card(const Workspace& work);

}  // namespace yardwright::panels
