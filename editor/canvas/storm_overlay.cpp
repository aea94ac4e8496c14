#include "editor/canvas/storm_overlay.hpp"

#include <algorithm>
#include <cmath>

#include "editor/canvas/canvas.hpp"
#include "editor/canvas/device.hpp"
#include "geom/sheet/storm_drawing.hpp"

namespace yardwright::canvas {

namespace {

constexpr double arrow_every_px = 26;

/// In doublings of a metre, so that arrows do not jump with every turn of the wheel.
double arrow_every_m(const session::View& view, const look::Look& look) {
  return std::exp2(std::ceil(std::log2(static_cast<double>(look.px(arrow_every_px)) / view.px_per_m)));
}

}  // namespace

std::size_t frame_at(const drain::storm::StormStory& story, double time_s) {
  const auto nearest = std::ranges::min_element(
      story.frames, {}, [&](const drain::storm::StormFrame& frame) { return std::abs(frame.time_s - time_s); });
  return static_cast<std::size_t>(nearest - story.frames.begin());
}

void StormOverlay::draw(const std::shared_ptr<const session::StormRecord>& record, double time_s,
                        const session::View& view, const look::Look& look, ImDrawList& list) {
  if (record == nullptr || record->story.frames.empty()) return;
  const std::size_t frame = frame_at(record->story, time_s);
  const double every_m = arrow_every_m(view, look);
  if (record != record_ || frame != frame_ || every_m != arrow_every_m_) {
    record_ = record;
    frame_ = frame;
    arrow_every_m_ = every_m;
    drawing_ = storm_drawing(record->story.frames[frame], record->story.deepest_m.frame(), every_m);
  }
  canvas::draw(drawing_, placement_of(view, look), look, list);
}

}  // namespace yardwright::canvas
