// Bringing files into the yard: a picture to lie under the plan, levels to be its ground, the rain table of
// its place.
#pragma once

#include "editor/panels/files_dialog.hpp"

namespace yardwright::panels {

void ask_picture(const Workspace& work, FilesDialog& dialog);
void ask_ground(const Workspace& work, FilesDialog& dialog);
void ask_rain(const Workspace& work, FilesDialog& dialog);

}  // namespace yardwright::panels
