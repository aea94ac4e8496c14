#include "editor/panels/top_row.hpp"

#include <algorithm>

#include "editor/panels/file_menu.hpp"
#include "editor/panels/widgets.hpp"
#include "editor/session/question_words.hpp"
#include "geom/site/finding_words.hpp"

namespace yardwright::panels {

namespace {

constexpr double chip_height_px = 32, widest_chip_px = 168, chip_gap_px = 7, edge_px = 16;

/// What a chip tells beside its name, as far as it has room; a number cut short would mislead.
std::string chip_words(const Workspace& work, Question question, float chip_width) {
  const auto& letters = work.look.letters;
  const std::string told = session::worst_in_short(findings_of(work.answers, question), work.units());
  const float room = chip_width - work.look.px(44) - width_of(std::string{session::name_of(question)}, letters.strong);
  return width_of(told, letters.small) <= room ? told : "";
}

/// All alike, so that none moves under the pointer while the answers change.
float chip_width(const Workspace& work, float room) {
  const float each = room / static_cast<float>(every_question.size()) - work.look.px(chip_gap_px);
  return std::min(each, work.look.px(widest_chip_px));
}

void show_chip(const Workspace& work, Question question, ImVec2 at, float width) {
  const ImVec2 size{width, work.look.px(chip_height_px)};
  ImGui::SetCursorScreenPos(at);
  ImGui::PushID(static_cast<int>(question));
  if (ImGui::InvisibleButton("chip", size)) {
    work.session.question = question;
    session::select_nothing(work.session);
    work.state.shows_yard = false;
  }
  const bool stale = work.answers.is_stale(question);
  const std::string counts = session::counts_in_words(findings_of(work.answers, question));
  hint(std::string{session::asks(question)} + (counts.empty() ? "" : "\n" + counts) +
       (stale ? "\nThis is the answer to the yard as it was; the new one is on its way." : ""));
  ImGui::PopID();
  const bool chosen = work.session.question == question;
  const Verdict verdict = worst(findings_of(work.answers, question));
  const Colour colour = stale ? palette::quiet_ink : palette::of(verdict);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const ImVec2 high{at.x + size.x, at.y + size.y};
  list.AddRectFilled(at, high, look::packed(ImGui::IsItemHovered() ? palette::paper : palette::white), size.y / 2);
  list.AddRect(at, high, look::packed(chosen ? palette::ink : palette::rule_line), size.y / 2, 0,
               work.look.px(chosen ? 1.8 : 1));
  symbol(list, {at.x + work.look.px(18), at.y + size.y / 2}, symbol_of(stale ? Verdict::not_checked : verdict), 0.85,
         work.look);
  const auto& letters = work.look.letters;
  float x = at.x + work.look.px(31);
  x += words_at(list, {x, at.y + (size.y - letters.strong->FontSize) / 2}, std::string{session::name_of(question)},
                letters.strong, palette::ink);
  const std::string told = chip_words(work, question, width);
  words_at(list, {x + work.look.px(6), at.y + (size.y - letters.small->FontSize) / 2}, told, letters.small,
           verdict == Verdict::not_checked ? palette::quiet_ink : colour);
}

void show_name(const Workspace& work, float width) {
  ImGui::PushFont(work.look.letters.strong);
  ImGui::PushStyleColor(ImGuiCol_FrameBg, look::unpacked(palette::card));
  ImGui::PushStyleColor(ImGuiCol_Border, look::unpacked(palette::none));
  if (const auto typed = typed_field(work.state.typing, "##name", title_of(work.session), width)) {
    session::perform(work.session, {SetName{*typed, work.session.site().title}});
  }
  ImGui::PopStyleColor(2);
  ImGui::PopFont();
  hint("The yard's name: click to change it.");
}

void show_phase(const Workspace& work, float width) {
  std::vector<session::Choice> choices;
  const auto& phases = work.session.site().phases;
  for (std::size_t i = 0; i < phases.size(); ++i) choices.push_back({std::to_string(i), "as of " + phases[i]});
  choices.push_back({"add", "add a phase"});
  const auto chosen = choice_field("##phase", choices, std::to_string(work.session.phase), width);
  hint("The questions are asked of the yard as it stands once this phase is built.");
  if (!chosen) return;
  if (*chosen != "add") {
    work.session.phase = std::stoi(*chosen);
    return;
  }
  std::vector<std::string> more = phases;
  more.push_back("phase " + std::to_string(phases.size()));
  session::perform(work.session, {SetPhases{more}});
  work.session.phase = static_cast<int>(phases.size());
}

/// As wide as the phase's name needs, within reason.
float phase_width(const Workspace& work) {
  const auto& phases = work.session.site().phases;
  const auto now = static_cast<std::size_t>(work.session.phase);
  const std::string shown = now < phases.size() ? "as of " + phases[now] : "";
  return std::clamp(width_of(shown, work.look.letters.plain) + work.look.px(42), work.look.px(116), work.look.px(190));
}

void show_units(const Workspace& work, ImVec2 at) {
  ImGui::SetCursorScreenPos(at);
  const bool us = work.units() == UnitSystem::us;
  if (pill(us ? "ft · bu" : "m · t", work.look)) {
    session::perform(work.session, {SetUnits{us ? UnitSystem::metric : UnitSystem::us}});
  }
  hint("Switch between feet and metres. Typed lengths are understood in both: 36ft, 11m.");
}

}  // namespace

void show_top_row(const Workspace& work, const canvas::Rect& place) {
  const auto px = [&](double at_scale_1) { return work.look.px(at_scale_1); };
  begin_panel("top", place);
  const float field_y = place.low.y + (place.high.y - ImGui::GetFrameHeight()) / 2;
  const float chip_y = place.low.y + (place.high.y - px(chip_height_px)) / 2;
  ImGui::SetCursorScreenPos({place.low.x + px(8), field_y});
  const float name_width = std::min(px(230), width_of(title_of(work.session), work.look.letters.strong) + px(30));
  show_name(work, name_width);
  ImGui::SetCursorScreenPos({place.low.x + px(8) + name_width + px(4), field_y});
  show_file_menu(work);
  ImGui::SameLine(0, px(6));
  show_phase(work, phase_width(work));
  float x = ImGui::GetItemRectMax().x + px(edge_px);
  const float right = place.high.x - px(edge_px) - px(64);
  const float width = chip_width(work, right - x);
  const auto count = static_cast<float>(every_question.size());
  x = std::max(x, x + (right - x - count * (width + px(chip_gap_px))) / 2);
  for (const Question question : every_question) {
    show_chip(work, question, {x, chip_y}, width);
    x += width + px(chip_gap_px);
  }
  show_units(work, {right + px(6), field_y});
  ImGui::End();
}

}  // namespace yardwright::panels
