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

/// A button with as many of the words as fit; all of them under the pointer.
bool mend_pill(const Workspace& work, const Finding& finding, const std::string& whole, const char* id, bool strong) {
  const float room = ImGui::GetWindowContentRegionMax().x - ImGui::GetCursorPosX() - work.look.px(inner_edge_px + 22);
  const std::string text = cut_to(whole, work.look.letters.small, room) + "##" + id;
  const bool pressed = pill(text, work.look, strong);
  if (ImGui::IsItemHovered()) work.session.pointed_finding = finding.id;
  if (!text.starts_with(whole)) hint(whole);
  return pressed;
}

/// What the desk found for it; null while it is not known.
const grow::Found* found_for(const Workspace& work, const Finding& finding) {
  if (work.found_mends == nullptr) return nullptr;
  const auto found = work.found_mends->found.find(finding.id);
  return found == work.found_mends->found.end() ? nullptr : &found->second;
}

void show_own_mends(const Workspace& work, const Finding& finding, const Edits* but) {
  bool first = true;
  for (const Mend& mend : finding.mends) {
    if (but != nullptr && mend.edits == *but) continue;
    const std::string id = "mend" + std::to_string(&mend - finding.mends.data());
    if (!first) same_line_if_room(pill_width(mend_words(mend, work.units()), work.look), work.look);
    if (mend_pill(work, finding, mend_words(mend, work.units()), id.c_str(), first && but == nullptr))
      session::take_mend(work.session, mend);
    first = false;
  }
}

/// The one that is proven, then the finding's own, which look no farther than their own rule.
void show_least(const Workspace& work, const Finding& finding, const grow::Change& least) {
  if (mend_pill(work, finding, grow::change_words(least, work.units()), "least", true))
    session::take_change(work.session, least);
  card_words(work, "the least change that is known; it breaks nothing that passes", palette::quiet_ink);
  const Edits edits = least.edits();
  show_own_mends(work, finding, &edits);
}

void show_what_breaks(const Workspace& work, const grow::Found& found) {
  if (found.harmful.empty() || found.harmful.front().breaks.empty()) return;
  card_words(work,
             "nothing is known that mends it and breaks nothing; to " +
                 grow::change_words(found.harmful.front(), work.units()) +
                 " would break: " + headline(found.harmful.front().breaks.front()),
             palette::caution);
}

void show_mends(const Workspace& work, const Finding& finding) {
  if (work.answers.is_stale(finding.question)) return show_mends_in_words(work, finding);
  if (finding.mends.empty() && mends_are_sought(work, finding.question))
    return card_words(work, "looking for the least change that passes ...", palette::quiet_ink);
  const grow::Found* found = found_for(work, finding);
  if (found != nullptr && found->least) return show_least(work, finding, *found->least);
  show_own_mends(work, finding, nullptr);
  if (found != nullptr) show_what_breaks(work, *found);
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
