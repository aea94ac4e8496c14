#include "editor/canvas/grow_overlay.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "editor/canvas/canvas.hpp"
#include "editor/canvas/device.hpp"
#include "editor/canvas/told_card.hpp"
#include "geom/sheet/grow_drawing.hpp"
#include "geom/units/text.hpp"

namespace yardwright::canvas {

namespace {

constexpr std::size_t most_reasons = 3;  // a card with more hides what it is about

Drawing drawing_of(const GrowShown& shown) {
  if (!shown.ground->newcomer) return {};
  Drawing drawing = allowed_drawing(shown.ground->answer.region);
  std::vector<SitePoint> places;
  if (shown.room && shown.room->of == shown.ground)
    places = shown.room->room.places;
  else
    for (const grow::Spot& spot : shown.ground->answer.spots) places.push_back(spot.at);
  for (Mark& mark : ghosts_drawing(*shown.ground->newcomer, places).marks) drawing.marks.push_back(std::move(mark));
  return drawing;
}

std::string length_words(const OverlayInput& input, double metres) {
  return text_of(metres, Quantity::length, input.session.site().units);
}

/// One line a reason, the deepest first.
ToldCard why_not(const OverlayInput& input, const std::vector<grow::AtPlace>& reasons, SitePoint at) {
  const bool barred = std::ranges::any_of(reasons, [](const auto& one) { return one.reason->worse == Verdict::fail; });
  ToldCard card{at, {barred ? "Not here" : "Advice speaks against it"}, 1, palette::of(reasons.front().reason->worse)};
  for (std::size_t i = 0; i < std::min(reasons.size(), most_reasons); ++i) {
    const grow::AtPlace& one = reasons[i];
    card.lines.push_back(fmt::format("it {}: clear of that {} away",
                                     grow::reason_words(*one.reason, input.session.site()),
                                     length_words(input, one.inside_m)));
  }
  if (reasons.size() > most_reasons)
    card.lines.push_back(fmt::format("and {} more reasons", reasons.size() - most_reasons));
  return card;
}

ToldCard it_stands(const OverlayInput& input, const grow::AllowedRegion& region, SitePoint at) {
  ToldCard card{at, {"It can stand here"}, 1, palette::pass};
  for (const grow::AtPlace& near : grow::nearest_reasons(region, at, 2)) {
    card.lines.push_back(fmt::format("moved {}, it {}", length_words(input, -near.inside_m),
                                     grow::reason_words(*near.reason, input.session.site())));
  }
  return card;
}

/// Shows the way out of the first reason, too.
void draw_way_out(const OverlayInput& input, const grow::AtPlace& first, SitePoint at, ImDrawList& list) {
  const ImVec2 from = on_screen(input.view, at), to = on_screen(input.view, first.way_out);
  const ImU32 colour = look::packed(palette::of(first.reason->worse));
  list.AddLine(from, to, colour, input.look.px(1.4));
  list.AddCircleFilled(to, input.look.px(3), colour);
}

/// Where a click would put the thing in hand; else what is under the pointer.
SitePoint pointed_at(const OverlayInput& input) {
  if (input.session.tool.doing == session::Doing::place) return input.pointer.snapped.at;
  const ImVec2 mouse = ImGui::GetIO().MousePos;
  return to_site(input.view, {static_cast<double>(mouse.x), static_cast<double>(mouse.y)});
}

}  // namespace

void GrowOverlay::draw(const GrowShown& shown, const OverlayInput& input, ImDrawList& list) {
  if (shown.proposal != shown_.proposal) {
    shown_.proposals = shown.proposals;
    shown_.proposal = shown.proposal;
    if (shown.proposal != nullptr) {
      const grow::GrowthTask& task = *shown.proposals->task;
      proposal_drawing_ = proposal_drawing(yardwright::apply(task.whole, shown.proposal->edits), task.first_new());
    }
  }
  if (shown.proposal != nullptr)
    return canvas::draw(proposal_drawing_, placement_of(input.view, input.look), input.look, list);
  if (shown.ground == nullptr || !shown.ground->newcomer) return;
  if (shown.ground != shown_.ground || shown.room != shown_.room) {
    shown_ = shown;
    reason_ = nullptr;
    drawing_ = drawing_of(shown);
  }
  canvas::draw(drawing_, placement_of(input.view, input.look), input.look, list);
  const SitePoint at = pointed_at(input);
  const bool points = input.pointer.over_plan && input.pointer.dragging == Dragging::nothing;
  if (points && contains({shown.ground->asked.site.lot.corners, {}}, at)) tell(at, input, list);
}

void GrowOverlay::tell(SitePoint at, const OverlayInput& input, ImDrawList& list) {
  const grow::AllowedRegion& region = shown_.ground->answer.region;
  const auto reasons = grow::reasons_at(region, at);
  if (reasons.empty()) return draw_told_card(it_stands(input, region, at), input.session, input.view, input.look, list);
  if (reason_ != reasons.front().reason) {
    reason_ = reasons.front().reason;
    reason_drawing_ = keep_off_drawing(*reason_);
  }
  canvas::draw(reason_drawing_, placement_of(input.view, input.look), input.look, list);
  draw_way_out(input, reasons.front(), at, list);
  draw_told_card(why_not(input, reasons, at), input.session, input.view, input.look, list);
}

}  // namespace yardwright::canvas
