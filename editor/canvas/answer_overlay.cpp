#include "editor/canvas/answer_overlay.hpp"

#include <algorithm>
#include <array>

#include "editor/canvas/canvas.hpp"
#include "editor/canvas/device.hpp"
#include "editor/canvas/reach_overlay.hpp"
#include "geom/sheet/symbol.hpp"
#include "geom/site/finding_words.hpp"
#include "geom/site/footprint.hpp"

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

float widest(const std::vector<std::string>& lines, ImFont* font) {
  float width = 0;
  for (const std::string& line : lines)
    width = std::max(width, font->CalcTextSizeA(font->FontSize, 1e6F, 0, line.c_str()).x);
  return width;
}

/// Kept on the canvas, clear of its foot.
ImVec2 on_canvas(const AnswerInput& input, ImVec2 low, ImVec2 size) {
  const auto& look = input.look;
  const float left = static_cast<float>(input.view.top_left.x), top = static_cast<float>(input.view.top_left.y);
  const float right = left + static_cast<float>(input.view.width_px),
              bottom = top + static_cast<float>(input.view.height_px);
  return {std::clamp(low.x, left + look.px(8), std::max(left + look.px(8), right - size.x - look.px(8))),
          std::clamp(low.y, top + look.px(8), std::max(top + look.px(8), bottom - size.y - look.px(60)))};
}

/// How many things of the plan it would hide.
std::ptrdiff_t hidden_by(const AnswerInput& input, ImVec2 low, ImVec2 size) {
  return std::ranges::count_if(input.session.site().items, [&](const Item& item) {
    if (!footprint(item.thing)) return false;
    const ImVec2 at = on_screen(input.view, place_of(item.thing));
    return at.x > low.x && at.y > low.y && at.x < low.x + size.x && at.y < low.y + size.y;
  });
}

/// Of the four corners around the place, the one where the card hides least.
ImVec2 card_corner(const AnswerInput& input, ImVec2 place, ImVec2 size) {
  const float across = input.look.px(24), down = input.look.px(22);
  const std::array<ImVec2, 4> corners{{{place.x + across, place.y + down},
                                       {place.x - across - size.x, place.y + down},
                                       {place.x + across, place.y - down - size.y},
                                       {place.x - across - size.x, place.y - down - size.y}}};
  const auto kept = [&](ImVec2 low) { return on_canvas(input, low, size); };
  return kept(*std::ranges::min_element(corners, {}, [&](ImVec2 low) { return hidden_by(input, kept(low), size); }));
}

/// A card beside the place.
void draw_told(const AnswerInput& input, const Finding& finding, ImDrawList& list) {
  const auto& look = input.look;
  const auto lines = told_lines(finding, input.session.site().units);
  ImFont* font = look.letters.small;
  const float line_height = font->FontSize * 1.35F;
  const ImVec2 size{widest(lines, look.letters.strong) * 0.88F + look.px(22),
                    line_height * static_cast<float>(lines.size()) + look.px(12)};
  const ImVec2 place = on_screen(input.view, middle_of(finding.place));
  const ImVec2 low = card_corner(input, place, size);
  const Colour colour = palette::of(finding.verdict);
  list.AddLine(place, {low.x < place.x ? low.x + size.x : low.x, low.y + size.y / 2}, packed(colour), look.px(1));
  list.AddRectFilled(low, {low.x + size.x, low.y + size.y}, packed(palette::white), look.px(8));
  list.AddRect(low, {low.x + size.x, low.y + size.y}, packed(colour), look.px(8), 0, look.px(1.2));
  for (std::size_t i = 0; i < lines.size(); ++i) {
    TextMark mark;
    mark.text = lines[i];
    mark.bold = i == 0;
    mark.colour = i == 1 ? colour : palette::ink;
    mark.halo = palette::none;
    draw_words(mark, {low.x + look.px(11), low.y + look.px(6) + line_height * (static_cast<float>(i) + 0.5F)},
               font->FontSize, look, list);
  }
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
