// A storm's water over the plan at the moment that is shown, kept between frames until the moment or the zoom changes.
#pragma once

#include <memory>

#include "editor/canvas/overlay.hpp"
#include "editor/session/storm_desk.hpp"
#include "geom/sheet/drawing.hpp"

namespace yardwright::canvas {

class StormOverlay {
 public:
  void draw(const std::shared_ptr<const session::StormRecord>& record, double time_s, const OverlayInput& input,
            ImDrawList& list);

 private:
  std::shared_ptr<const session::StormRecord> record_;
  std::size_t frame_ = 0;
  double arrow_every_m_ = 0;
  Drawing drawing_;
};

/// The water under the pointer, on a card over all else.
void tell_water(const std::shared_ptr<const session::StormRecord>& record, double time_s, const OverlayInput& input,
                ImDrawList& list);

}  // namespace yardwright::canvas
