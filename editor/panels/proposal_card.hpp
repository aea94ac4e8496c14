// Proposals, a part of Grow's side: what is wanted of the yard, the search, and the layouts that it found.
#pragma once

#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

void show_proposal_card(const Workspace& work);

}  // namespace yardwright::panels
