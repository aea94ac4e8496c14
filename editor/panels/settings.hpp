// The limits that a question judges by, each with its basis, to be set for this site.
#pragma once

#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

void show_settings(const Workspace& work, Question question);

}  // namespace yardwright::panels
