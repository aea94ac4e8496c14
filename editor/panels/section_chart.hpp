// Below the plan, in Drain: the ground cut along the measured or selected line, with what it crosses, and the water of a
// storm at the moment that the plan shows.
#pragma once

#include "editor/canvas/canvas.hpp"
#include "editor/panels/workspace.hpp"
#include "editor/session/shown_line.hpp"

namespace yardwright::panels {

/// `hint` says what else could be shown.
void draw_section_chart(const Workspace& work, const session::ShownLine& line, const canvas::Rect& place,
                        const std::string& hint = {});

}  // namespace yardwright::panels
