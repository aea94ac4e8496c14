// Grow over the plan: the ground on which the next thing can stand, the things that could be built, and under the pointer
// why not here, or how far it can be moved. Its areas are kept between frames until another answer is back.
#pragma once

#include "editor/canvas/overlay.hpp"
#include "editor/session/proposal_desk.hpp"
#include "editor/session/room_desk.hpp"

namespace yardwright::canvas {

/// Found by the desks; either may be null, and both may be of the yard as it was.
struct GrowShown {
  std::shared_ptr<const session::GrowRecord> ground;
  std::shared_ptr<const session::RoomRecord> room;
  std::shared_ptr<const session::ProposalRecord> proposals;
  const grow::Proposal* proposal = nullptr;  ///< of them, shown in the place of the rest
};

class GrowOverlay {
 public:
  void draw(const GrowShown& shown, const OverlayInput& input, ImDrawList& list);

 private:
  void tell(SitePoint at, const OverlayInput& input, ImDrawList& list);

  GrowShown shown_;
  Drawing drawing_;
  const grow::KeepOff* reason_ = nullptr;  ///< of the ground that is shown
  Drawing reason_drawing_;
  Drawing proposal_drawing_;
};

}  // namespace yardwright::canvas
