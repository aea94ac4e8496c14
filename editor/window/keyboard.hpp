// What the keys do outside of text fields: undo, redo, files, copies, nudges, fit, Escape.
#pragma once

#include "editor/canvas/canvas.hpp"
#include "editor/panels/workspace.hpp"

namespace yardwright::window {

void obey_keys(const panels::Workspace& work, canvas::Canvas& canvas);

}  // namespace yardwright::window
