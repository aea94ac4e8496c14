#include "editor/canvas/reach_overlay.hpp"

#include <fmt/format.h>

#include "editor/canvas/canvas.hpp"
#include "editor/canvas/device.hpp"
#include "editor/session/seen_reach.hpp"
#include "geom/sheet/marks.hpp"
#include "geom/units/text.hpp"

namespace yardwright::canvas {

namespace {

constexpr double roomy_ring_px = 260;  // words along a smaller ring would be longer than its side
constexpr double least_ring_px = 90;   // a smaller one has no room for any

Colour colour_of(Verdict verdict) { return verdict == Verdict::pass ? palette::reach : palette::of(verdict); }

void draw_spout(const AnswerInput& input, const reach::CheckedSpout& spout, ImDrawList& list) {
  const Verdict verdict = verdict_on(input.answers.reach->findings, spout.spout);
  Drawing drawing;
  const std::vector<double> dash = verdict == Verdict::fail ? std::vector{1.8, 1.1} : std::vector<double>{};
  drawing.marks.push_back(line({spout.line.from, spout.line.to}, {colour_of(verdict), 0.5, dash}));
  draw(drawing, placement_of(input.view, input.look), input.look, list);
  const SitePoint middle = between(spout.line.from, spout.line.to, 0.5);
  if (spout.line.run_m() * input.view.px_per_m < static_cast<double>(input.look.px(46))) return;
  draw_label(fmt::format("{:.0f}°", spout.line.slope().as_degrees()), on_screen(input.view, middle), colour_of(verdict),
             input.look, list);
}

/// Words along the upper left of the ring, where they read from below; fewer where there is less room.
void draw_ring_words(const AnswerInput& input, const reach::ReachRing& ring, double across_px, ImDrawList& list) {
  const std::size_t at = ring.ring.size() * 7 / 8;
  const SitePoint here = ring.ring[at], next = ring.ring[(at + 1) % ring.ring.size()];
  const std::string bins = text_of(ring.diameter_m, Quantity::length, input.session.site().units) + " bins";
  const bool roomy = across_px > static_cast<double>(input.look.px(roomy_ring_px));
  TextMark mark = words(here, bins + (roomy ? " are reached inside this ring" : ""), 2.5, palette::reach);
  mark.turn_deg = turn_along_deg(next - here);
  mark.offset_mm = {0, 0};
  mark.halo = palette::paper;
  draw_words(mark, on_screen(input.view, here), input.look.px(11), input.look, list);
}

void draw_ring(const AnswerInput& input, const reach::ReachRing& reach_ring, ImDrawList& list) {
  if (reach_ring.ring.size() < 3) return;
  Drawing drawing;
  drawing.marks.push_back(area(reach_ring.ring, palette::reach.faded(0.05)));
  drawing.marks.push_back(ring(reach_ring.ring, {palette::reach.faded(0.8), 0.28, {1.6, 1.1}}));
  draw(drawing, placement_of(input.view, input.look), input.look, list);
  const Box box = box_of(reach_ring.ring);
  const double across_px = (box.high.x - box.low.x) * input.view.px_per_m;
  if (across_px > static_cast<double>(input.look.px(least_ring_px)))
    draw_ring_words(input, reach_ring, across_px, list);
}

}  // namespace

void draw_label(const std::string& text, ImVec2 middle, Colour colour, const look::Look& look, ImDrawList& list) {
  ImFont* font = look.letters.small;
  const ImVec2 size = font->CalcTextSizeA(font->FontSize, 1e6F, 0, text.c_str());
  const ImVec2 low{middle.x - size.x / 2 - look.px(6), middle.y - size.y / 2 - look.px(2)};
  const ImVec2 high{middle.x + size.x / 2 + look.px(6), middle.y + size.y / 2 + look.px(2)};
  list.AddRectFilled(low, high, look::packed(palette::white), look.px(8));
  list.AddRect(low, high, look::packed(colour), look.px(8), 0, look.px(1.2));
  list.AddText(font, font->FontSize, {std::round(middle.x - size.x / 2), std::round(middle.y - size.y / 2)},
               look::packed(colour), text.c_str());
}

void draw_reach(const AnswerInput& input, ImDrawList& list) {
  for (const reach::ReachRing* ring : session::seen_rings(input.session, input.answers)) draw_ring(input, *ring, list);
  for (const reach::CheckedSpout& spout : input.answers.reach->spouts) draw_spout(input, spout, list);
}

}  // namespace yardwright::canvas
