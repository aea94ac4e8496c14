// The menu beside the yard's name: new, open, recent, save, save as; and whether there is something to save.
#pragma once

#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

void show_file_menu(const Workspace& work);

}  // namespace yardwright::panels
