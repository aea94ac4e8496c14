// The drawing inside the side view: ground, leg, spout and what it fills, in metres along the spout's plan and metres
// of level, at one scale.
#pragma once

#include "editor/canvas/canvas.hpp"
#include "editor/panels/workspace.hpp"

namespace yardwright::panels {

struct SideScene {
  const Workspace& work;
  const reach::CheckedSpout& spout;
  const Leg& leg;
  const Item& receiver;
  Verdict verdict = Verdict::pass;
};

void draw_side_scene(const SideScene& scene, const canvas::Rect& place);

}  // namespace yardwright::panels
