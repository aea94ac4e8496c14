#include "editor/canvas/storm_overlay.hpp"

#include <algorithm>
#include <cmath>

#include "editor/canvas/canvas.hpp"
#include "editor/canvas/device.hpp"
#include "editor/canvas/told_card.hpp"
#include "geom/drain/storm/water_here.hpp"
#include "geom/sheet/storm_drawing.hpp"

namespace yardwright::canvas {

namespace {

constexpr double arrow_every_px = 26;

/// In doublings of a metre, so that arrows do not jump with every turn of the wheel.
double arrow_every_m(const session::View& view, const look::Look& look) {
  return std::exp2(std::ceil(std::log2(static_cast<double>(look.px(arrow_every_px)) / view.px_per_m)));
}

}  // namespace

void StormOverlay::draw(const std::shared_ptr<const session::StormRecord>& record, double time_s,
                        const OverlayInput& input, ImDrawList& list) {
  if (record == nullptr || record->story.frames.empty()) return;
  const drain::storm::StormStory& story = record->story;
  const std::size_t frame = drain::storm::frame_at(story, time_s);
  const double every_m = arrow_every_m(input.view, input.look);
  if (record != record_ || frame != frame_ || every_m != arrow_every_m_) {
    record_ = record;
    frame_ = frame;
    arrow_every_m_ = every_m;
    drawing_ = storm_drawing(story.frames[frame], story.deepest_m.frame(), every_m);
  }
  canvas::draw(drawing_, placement_of(input.view, input.look), input.look, list);
}

void tell_water(const std::shared_ptr<const session::StormRecord>& record, double time_s, const OverlayInput& input,
                ImDrawList& list) {
  constexpr double told_from_m = 0.005;  // where none ever stands a card would only hide the plan
  const bool points = input.pointer.over_plan && input.pointer.dragging == Dragging::nothing &&
                      input.session.tool.doing == session::Doing::select;
  if (record == nullptr || !points) return;
  const ImVec2 mouse = ImGui::GetIO().MousePos;
  const SitePoint at = to_site(input.view, {static_cast<double>(mouse.x), static_cast<double>(mouse.y)});
  const auto water = drain::storm::water_here(record->story, time_s, at);
  if (!water || water->deepest_m < told_from_m) return;
  const ToldCard card{at, drain::storm::water_words(*water, input.session.site().units), 1, palette::water};
  draw_told_card(card, input.session, input.view, input.look, list);
}

}  // namespace yardwright::canvas
