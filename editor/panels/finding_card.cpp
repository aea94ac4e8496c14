#include "editor/panels/finding_card.hpp"

#include "editor/panels/widgets.hpp"
#include "geom/site/finding_words.hpp"

namespace yardwright::panels {

namespace {

void bring_into_view(const Workspace& work, const Finding& finding) {
  work.session.pointed_finding = finding.id;
  std::vector<SitePoint> points = finding.place;
  if (points.empty()) {
    work.session.look_at = session::bounds_of(work.session.site(), finding.items);
    return;
  }
  const Box around = session::bounds_of(work.session.site(), finding.items);
  if (!finding.items.empty()) points.insert(points.end(), {around.low, around.high});
  work.session.look_at = grown(box_of(points), finding.items.empty() ? 15 : 0);
}

constexpr double inner_edge_px = 12;  ///< between the words and the card's right edge

void card_words(const Workspace& work, const std::string& text, Colour colour) {
  words(text, work.look.letters.small, colour, true, work.look.px(inner_edge_px));
}

bool mends_are_sought(const Workspace& work, Question question) {
  return (question == Question::turn && !work.answers.turn->mends_sought) ||
         (question == Question::drain && !work.answers.drain->mends_sought) ||
         (question == Question::grow && !work.growth.is_at_rest());
}

/// A mend of the yard as it was must not be put into the yard as it is.
void show_mends_in_words(const Workspace& work, const Finding& finding) {
  for (const Mend& mend : finding.mends) card_words(work, mend_words(mend, work.units()), palette::quiet_ink);
}

void show_mends(const Workspace& work, const Finding& finding) {
  if (work.answers.is_stale(finding.question)) return show_mends_in_words(work, finding);
  if (finding.mends.empty() && mends_are_sought(work, finding.question)) {
    return card_words(work, "looking for the least change that passes ...", palette::quiet_ink);
  }
  for (std::size_t i = 0; i < finding.mends.size(); ++i) {
    const std::string whole = mend_words(finding.mends[i], work.units());
    const float room = ImGui::GetWindowContentRegionMax().x - ImGui::GetCursorPosX() - work.look.px(inner_edge_px + 22);
    const std::string text = cut_to(whole, work.look.letters.small, room) + "##mend" + std::to_string(i);
    if (i > 0) same_line_if_room(pill_width(text, work.look), work.look);
    if (pill(text, work.look, i == 0)) session::take_mend(work.session, finding.mends[i]);
    if (ImGui::IsItemHovered()) work.session.pointed_finding = finding.id;
    if (!text.starts_with(whole)) hint(whole);
  }
}

bool has_place(const Finding& finding) { return !finding.place.empty() || !finding.items.empty(); }

void show_buttons(const Workspace& work, const Finding& finding) {
  std::string& explained = work.state.explained_finding;
  if (finding.verdict != Verdict::pass) show_mends(work, finding);
  if (!finding.mends.empty() && finding.verdict != Verdict::pass)
    same_line_if_room(pill_width(has_place(finding) ? "show" : "why", work.look), work.look);
  if (has_place(finding)) {
    if (pill("show", work.look)) bring_into_view(work, finding);
    same_line_if_room(pill_width("why", work.look), work.look);
  }
  if (pill("why", work.look)) explained = explained == finding.id ? "" : finding.id;
  if (explained == finding.id)
    card_words(work, basis_words(finding) + " (rule " + finding.rule + ")", palette::quiet_ink);
}

void show_words(const Workspace& work, const Finding& finding) {
  words(headline(finding), work.look.letters.strong, palette::ink, true, work.look.px(inner_edge_px));
  const std::string measured = measured_words(finding, work.units());
  if (!measured.empty()) card_words(work, measured, palette::quiet_ink);
  const std::string margin = margin_words(finding, work.units());
  if (!margin.empty()) card_words(work, margin, palette::of(finding.verdict));
  if (!finding.note.empty()) card_words(work, finding.note, palette::quiet_ink);
}

void draw_card(const Workspace& work, const Finding& finding, ImVec2 low, ImVec2 high) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const bool pointed = work.session.pointed_finding == finding.id;
  const bool quiet = finding.verdict == Verdict::pass || finding.verdict == Verdict::not_checked;
  list.AddRectFilled(low, high, look::packed(palette::white), work.look.px(9));
  list.AddRect(low, high, look::packed(quiet && !pointed ? palette::rule_line : palette::of(finding.verdict)),
               work.look.px(9), 0,
               work.look.px(pointed                            ? 2.2
                            : finding.verdict == Verdict::fail ? 1.5
                                                               : 1));
  symbol(list, {low.x + work.look.px(18), low.y + work.look.px(20)}, symbol_of(finding.verdict), 0.85, work.look);
}

}  // namespace

void show_finding_card(const Workspace& work, const Finding& finding) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const auto px = [&](double at_scale_1) { return work.look.px(at_scale_1); };
  ImGui::PushID(finding.id.c_str());
  const ImVec2 low = ImGui::GetCursorScreenPos();
  const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
  list.ChannelsSplit(2);
  list.ChannelsSetCurrent(1);
  ImGui::SetCursorScreenPos({low.x + px(34), low.y + px(10)});
  ImGui::BeginGroup();
  ImGui::PushItemWidth(right - low.x - px(48));
  ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {px(6), px(4)});
  show_words(work, finding);
  show_buttons(work, finding);
  ImGui::PopStyleVar();
  ImGui::PopItemWidth();
  ImGui::EndGroup();
  const ImVec2 high{right, ImGui::GetItemRectMax().y + px(10)};
  list.ChannelsSetCurrent(0);
  draw_card(work, finding, low, high);
  list.ChannelsMerge();
  if (ImGui::IsMouseHoveringRect(low, high) && ImGui::IsWindowHovered()) work.session.pointed_finding = finding.id;
  ImGui::SetCursorScreenPos({low.x, high.y + px(8)});
  ImGui::PopID();
}

}  // namespace yardwright::panels
