#include "editor/panels/settings.hpp"

#include <algorithm>

#include "editor/panels/field_row.hpp"
#include "editor/panels/yard_card.hpp"
#include "geom/units/text.hpp"

namespace yardwright::panels {

namespace {

constexpr double shown_ratio = 1e-3;  ///< of a rule's value: the field is narrow, and what is not typed is not taken

const RuleOverride* own_of(const Workspace& work, const Rule& rule) {
  const auto& own = work.session.site().rule_overrides;
  const auto found = std::ranges::find(own, rule.id, &RuleOverride::rule);
  return found == own.end() ? nullptr : &*found;
}

/// Why the yard has its own value, and on what basis.
void show_reason(const Workspace& work, RuleOverride own) {
  session::FieldRow basis{own.rule + ".basis",      "", "its basis", "what the value rests on",
                          session::RowKind::choice, {}, {}};
  const auto names = names_of(own.basis);
  for (const std::string_view name : names) basis.choices.push_back({std::string{name}, session::spoken(name)});
  basis.text = names[static_cast<std::size_t>(own.basis)];
  const session::FieldRow reason{
      own.rule + ".reason", "", "its reason", "why this yard has its own value", session::RowKind::words,
      own.reason,           {}};
  const RuleOverride before = own;
  if (const auto chosen = field_row(work, basis))
    own.basis = static_cast<Basis>(std::ranges::find(names, *chosen) - names.begin());
  if (const auto typed = field_row(work, reason)) own.reason = *typed;
  if (!(own == before)) session::perform(work.session, {SetRule{std::move(own)}});
}

void take(const Workspace& work, const Rule& rule, const std::string& text) {
  const auto value = parse_quantity(text, rule.quantity, work.units());
  keep_refusal(work, rule.id, value ? nullptr : &value.error());
  if (!value) return;
  const RuleOverride* before = own_of(work, rule);
  RuleOverride own = before != nullptr ? *before : RuleOverride{rule.id, 0, Basis::local, "set for this yard"};
  own.value = *value;
  session::perform(work.session, {SetRule{std::move(own)}});
}

void show_rule(const Workspace& work, const Rule& rule) {
  const auto& look = work.look;
  ImGui::PushID(rule.id.c_str());
  const float left = ImGui::GetCursorPosX(), field = look.px(84);
  const float right = ImGui::GetWindowContentRegionMax().x;
  const float field_at = right - field - look.px(92);
  ImGui::AlignTextToFramePadding();
  ImGui::PushTextWrapPos(field_at - look.px(6));
  ImGui::PushFont(look.letters.small);
  ImGui::TextUnformatted(rule.label.c_str());
  ImGui::PopFont();
  ImGui::PopTextWrapPos();
  hint(rule.source);
  ImGui::SameLine(field_at);
  if (const auto typed =
          typed_field(work.state.typing, "##value",
                      session::text_for_typing(rule.value, rule.quantity, work.units(), shown_ratio), field))
    take(work, rule, *typed);
  ImGui::SameLine(right - look.px(86));
  const RuleOverride* own = own_of(work, rule);
  bool clears = false;
  if (own != nullptr) {
    clears = pill("own ×", look);
    hint("Set for this yard. Click to go back to the rule book.");
  } else {
    words(std::string{words_for(rule.basis)}, look.letters.small, palette::quiet_ink, true);
    hint(rule.source);
  }
  ImGui::SetCursorPosX(left);
  show_refusal(work, rule.id);
  if (own != nullptr) show_reason(work, *own);
  if (clears) session::perform(work.session, {ClearRule{rule.id}});
  ImGui::PopID();
}

}  // namespace

void show_settings(const Workspace& work, Question question) {
  const RuleBook book = work.catalogs.rules.with(work.session.site().rule_overrides);
  const std::string front = std::string{names_of(question)[static_cast<std::size_t>(question)]} + ".";
  ImGui::Dummy({0, work.look.px(4)});
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
  ImGui::GetWindowDrawList()->AddLine(at, {right, at.y}, look::packed(palette::rule_line), work.look.px(1));
  ImGui::Dummy({0, work.look.px(2)});
  words("Settings of this question", work.look.letters.strong, palette::ink);
  if (question == Question::drain) {
    if (work.session.site().ground.levels.empty() && pill("bring in levels of the ground ...", work.look, true))
      work.state.wish = FileWish::ground;
    show_storm(work);
  }
  bool any = false;
  for (const Rule& rule : book.rules()) {
    if (!rule.id.starts_with(front)) continue;
    show_rule(work, rule);
    any = true;
  }
  if (!any) words("It has none yet in the rule book.", work.look.letters.small, palette::quiet_ink, true);
}

}  // namespace yardwright::panels
