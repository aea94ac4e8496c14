// One finding as a card: verdict, what, measured of required, margin, and buttons that show it, mend it or say why.
#pragma once

#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

void show_finding_card(const Workspace& work, const Finding& finding);

}  // namespace yardwright::panels
