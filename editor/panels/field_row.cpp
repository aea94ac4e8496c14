#include "editor/panels/field_row.hpp"

namespace yardwright::panels {

namespace {

using session::Choice;
using session::FieldRow;
using session::RowKind;

std::vector<Choice> item_choices(const Site& site) {
  std::vector<Choice> choices{{"0", "none"}};
  for (const Item& item : site.items) choices.push_back({std::to_string(item.id.number), title_of(item)});
  return choices;
}

std::string names_of_items(const Site& site, const std::string& numbers) {
  std::string names, number;
  for (const char c : numbers + " ") {
    if (c != ' ') {
      number += c;
      continue;
    }
    const Item* item = number.empty() ? nullptr : find(site, {std::stoi(number)});
    if (item != nullptr) names += (names.empty() ? "" : ", ") + title_of(*item);
    number.clear();
  }
  return names.empty() ? "none" : names;
}

/// A list of items: a choice adds one, a button takes the last away.
std::optional<std::string> list_field(const Workspace& work, const FieldRow& row, float width) {
  words(names_of_items(work.session.site(), row.text), work.look.letters.small, palette::ink, true);
  const auto added = choice_field("##add", item_choices(work.session.site()), "add a stop", width);
  if (added && *added != "0") return row.text.empty() ? *added : row.text + " " + *added;
  if (row.text.empty()) return std::nullopt;
  if (pill("take the last away", work.look))
    return row.text.substr(0, row.text.rfind(' ') == std::string::npos ? 0 : row.text.rfind(' '));
  return std::nullopt;
}

std::optional<std::string> editor_of(const Workspace& work, const FieldRow& row, float width) {
  switch (row.kind) {
    case RowKind::number:
    case RowKind::words: return typed_field(work.state.typing, "##typed", row.text, width);
    case RowKind::flag:
    case RowKind::choice: return choice_field("##choice", row.choices, row.text, width);
    case RowKind::item: return choice_field("##item", item_choices(work.session.site()), row.text, width);
    case RowKind::item_list: return list_field(work, row, width);
    case RowKind::line: words(row.text, work.look.letters.small, palette::quiet_ink); break;
  }
  return std::nullopt;
}

}  // namespace

void row_label(const Workspace& work, const std::string& label, const std::string& means) {
  ImGui::AlignTextToFramePadding();
  words(label, work.look.letters.small, palette::quiet_ink);
  hint(means);
  ImGui::SameLine(work.look.px(140));
}

float room_for_field() { return ImGui::GetContentRegionAvail().x; }

std::optional<std::string> field_row(const Workspace& work, const FieldRow& row) {
  ImGui::PushID(row.key.c_str());
  row_label(work, row.label, row.means);
  ImGui::BeginGroup();
  auto typed = editor_of(work, row, room_for_field());
  ImGui::EndGroup();
  show_refusal(work, row.key);
  ImGui::PopID();
  return typed;
}

void show_refusal(const Workspace& work, const std::string& key) {
  const Typing& typing = work.state.typing;
  if (typing.refused_key != key || typing.refused_at != work.session.history.revision()) return;
  words(typing.problem, work.look.letters.small, palette::fail, true);
}

void keep_refusal(const Workspace& work, const std::string& key, const Problem* problem) {
  work.state.typing.refused_key = problem != nullptr ? key : "";
  work.state.typing.problem = problem != nullptr ? sentence(*problem) : "";
  work.state.typing.refused_at = work.session.history.revision();
}

}  // namespace yardwright::panels
