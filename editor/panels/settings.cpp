#include "editor/panels/settings.hpp"

#include <algorithm>

#include "editor/panels/question_words.hpp"
#include "editor/panels/widgets.hpp"
#include "geom/units/text.hpp"

namespace yardwright::panels {

namespace {

bool is_own(const Workspace& work, const Rule& rule) {
  const auto& own = work.session.site().rule_overrides;
  return std::ranges::find(own, rule.id, &RuleOverride::rule) != own.end();
}

void take(const Workspace& work, const Rule& rule, const std::string& text) {
  Typing& typing = work.state.typing;
  const auto value = parse_quantity(text, rule.quantity, work.units());
  typing.refused_key = value ? "" : rule.id;
  if (!value) {
    typing.problem = value.error().what + "; " + value.error().mend;
    return;
  }
  session::perform(work.session, {SetRule{{rule.id, *value, Basis::local, "set for this yard"}}});
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
  if (const auto typed = typed_field(work.state.typing, "##value", exact_text_of(rule.value, rule.quantity, work.units()), field)) take(work, rule, *typed);
  ImGui::SameLine(right - look.px(86));
  if (is_own(work, rule)) {
    if (pill("own ×", look)) session::perform(work.session, {ClearRule{rule.id}});
    hint("Set for this yard. Click to go back to the rule book.");
  } else {
    words(std::string{words_for(rule.basis)}, look.letters.small, palette::quiet_ink, true);
    hint(rule.source);
  }
  ImGui::SetCursorPosX(left);
  if (work.state.typing.refused_key == rule.id) words(work.state.typing.problem, look.letters.small, palette::fail, true);
  ImGui::PopID();
}

}  // namespace

void show_settings(const Workspace& work, Question question) {
  const RuleBook book = work.catalogs.rules.with(work.session.site().rule_overrides);
  const std::string front = std::string{names_of(question)[static_cast<std::size_t>(question)]} + ".";
  ImGui::Dummy({0, work.look.px(4)});
  ImGui::Separator();
  ImGui::Dummy({0, work.look.px(2)});
  words("Settings of this question", work.look.letters.strong, palette::ink);
  bool any = false;
  for (const Rule& rule : book.rules()) {
    if (!rule.id.starts_with(front)) continue;
    show_rule(work, rule);
    any = true;
  }
  if (!any) words("It has none yet in the rule book.", work.look.letters.small, palette::quiet_ink, true);
}

}  // namespace yardwright::panels
