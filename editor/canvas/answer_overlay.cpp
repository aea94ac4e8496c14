#include "editor/canvas/answer_overlay.hpp"

#include <algorithm>

#include "editor/canvas/canvas.hpp"
#include "editor/canvas/device.hpp"
#include "editor/canvas/reach_overlay.hpp"
#include "editor/canvas/told_card.hpp"
#include "geom/sheet/symbol.hpp"
#include "geom/site/finding_words.hpp"

namespace yardwright::canvas {

namespace {

using look::packed;

bool wants_care(const Finding& finding) {
  return finding.verdict == Verdict::fail || finding.verdict == Verdict::caution;
}

SitePoint middle_of(const SitePath& place) { return pose_at(place, length(place) / 2).at; }

void draw_place(const AnswerInput& input, const Finding& finding, ImDrawList& list) {
  const ImU32 colour = packed(palette::of(finding.verdict));
  std::vector<ImVec2> points;
  for (const SitePoint point : finding.place) points.push_back(on_screen(input.view, point));
  list.AddPolyline(points.data(), static_cast<int>(points.size()), colour, ImDrawFlags_None, input.look.px(2));
  const ImVec2 at = on_screen(input.view, middle_of(finding.place));
  list.AddCircleFilled(at, input.look.px(8.5), packed(palette::white));
  list.AddCircle(at, input.look.px(8.5), colour, 0, input.look.px(1.2));
  Drawing mark;
  mark.y_up = false;
  mark.marks.push_back(SymbolMark{{0, 0}, scaled(symbol_of(finding.verdict), 0.62)});
  draw(mark, {static_cast<double>(at.x), static_cast<double>(at.y), 1, input.look.px_per_mm()}, input.look, list);
}

bool is_about_selected(const AnswerInput& input, const Finding& finding) {
  const auto& selection = input.session.selection;
  return std::ranges::find_first_of(finding.items, selection) != finding.items.end();
}

/// Of what is selected, else the one that is pointed at on the right, else the worst.
const Finding* told_finding(const AnswerInput& input, const Findings& findings) {
  const Finding *worst = nullptr, *pointed = nullptr;
  for (const Finding& finding : findings) {
    if (finding.place.empty()) continue;
    if (wants_care(finding) && is_about_selected(input, finding)) return &finding;
    if (finding.id == input.session.pointed_finding) pointed = &finding;
    if (worst == nullptr && finding.verdict == Verdict::fail) worst = &finding;
  }
  if (pointed != nullptr || !input.session.selection.empty()) return pointed;  // what is worked on stays in sight
  return worst;
}

std::vector<std::string> told_lines(const Finding& finding, UnitSystem units) {
  std::vector<std::string> lines{headline(finding)};
  const std::string margin = margin_words(finding, units);
  if (!margin.empty()) lines.push_back(margin);
  if (wants_care(finding) && !finding.mends.empty()) lines.push_back(mend_words(finding.mends.front(), units));
  return lines;
}

void draw_told(const AnswerInput& input, const Finding& finding, ImDrawList& list) {
  draw_told_card(
      {middle_of(finding.place), told_lines(finding, input.session.site().units), 1, palette::of(finding.verdict)},
      input.session, input.view, input.look, list);
}

void draw_over_plan(const AnswerInput& input, const Drawing& drawing, ImDrawList& list) {
  draw(drawing, placement_of(input.view, input.look), input.look, list);
}

PlanBelow plan_below(const AnswerInput& input) {
  return {input.session.site(), input.plan, input.session.history.revision(),
          input.look.px_per_mm() / input.view.px_per_m};
}

}  // namespace

void draw_answer(const AnswerInput& input, AnswerCache& kept, ImDrawList& list) {
  const Question question = input.session.question;
  if (question == Question::reach) draw_reach(input, list);
  if (question == Question::turn) draw_over_plan(input, kept.turn(input.answers), list);
  if (question == Question::drain) draw_over_plan(input, kept.drain(input.answers, plan_below(input)), list);
  const Findings& findings = findings_of(input.answers, question);
  for (const Finding& finding : findings) {
    // Reach draws its spouts itself, in the colour of their verdicts.
    const bool is_drawn = question == Question::reach && finding.place.size() > 1;
    if (wants_care(finding) && !finding.place.empty() && !is_drawn) draw_place(input, finding, list);
  }
  if (const Finding* told = told_finding(input, findings)) draw_told(input, *told, list);
}

}  // namespace yardwright::canvas
