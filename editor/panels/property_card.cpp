#include "editor/panels/property_card.hpp"

#include "editor/panels/widgets.hpp"

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
  if (pill("take the last away", work.look)) return row.text.substr(0, row.text.rfind(' ') == std::string::npos ? 0 : row.text.rfind(' '));
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

void take(const Workspace& work, const Item& item, const FieldRow& row, const std::string& text) {
  Typing& typing = work.state.typing;
  const auto thing = session::with_field(item.thing, row.key, text, work.units());
  typing.refused_key = thing ? "" : row.key;
  if (!thing) {
    typing.problem = sentence(thing.error());
    return;
  }
  Item other = item;
  other.thing = *thing;
  session::perform(work.session, {PutItem{std::move(other)}});
}

void row_label(const Workspace& work, const std::string& label, const std::string& means) {
  ImGui::AlignTextToFramePadding();
  words(label, work.look.letters.small, palette::quiet_ink);
  hint(means);
  ImGui::SameLine(work.look.px(140));
}

float field_width() { return ImGui::GetContentRegionAvail().x; }

void show_row(const Workspace& work, const Item& item, const FieldRow& row) {
  ImGui::PushID(row.key.c_str());
  row_label(work, row.label, row.means);
  ImGui::BeginGroup();
  const auto typed = editor_of(work, row, field_width());
  ImGui::EndGroup();
  if (work.state.typing.refused_key == row.key) words(work.state.typing.problem, work.look.letters.small, palette::fail, true);
  ImGui::PopID();
  if (typed) take(work, item, row, *typed);
}

void show_name(const Workspace& work, const Item& item) {
  row_label(work, "name", "how it is called on the plan");
  if (const auto typed = typed_field(work.state.typing, "##item name", item.name, field_width())) {
    Item other = item;
    other.name = *typed;
    session::perform(work.session, {PutItem{std::move(other)}});
  }
}

void show_phase(const Workspace& work, const Item& item) {
  std::vector<Choice> choices, gone{{"", "stays"}};
  const auto& phases = work.session.site().phases;
  for (std::size_t i = 0; i < phases.size(); ++i) {
    choices.push_back({std::to_string(i), phases[i]});
    if (i > 0) gone.push_back({std::to_string(i), phases[i]});
  }
  Item other = item;
  row_label(work, "built in", "the phase in which it is built");
  if (const auto chosen = choice_field("##built", choices, std::to_string(item.phase), field_width())) other.phase = std::stoi(*chosen);
  if (phases.size() > 1) {
    row_label(work, "taken away in", "the phase in which it goes");
    const std::string now = item.gone_in ? std::to_string(*item.gone_in) : "";
    const auto chosen = choice_field("##gone", gone, now, field_width());
    if (chosen) other.gone_in = chosen->empty() ? std::nullopt : std::optional{std::stoi(*chosen)};
  }
  if (!(other == item)) session::perform(work.session, {PutItem{std::move(other)}});
}

}  // namespace

void show_selection_actions(const Workspace& work) {
  if (pill("turn 15°", work.look)) session::turn_selected(work.session, Angle::degrees(15));
  ImGui::SameLine();
  if (pill("duplicate", work.look)) session::duplicate_selected(work.session);
  hint("Ctrl+D");
  ImGui::SameLine();
  if (pill("remove", work.look)) session::remove_selected(work.session);
  hint("Delete");
  ImGui::SameLine();
  if (pill("done", work.look)) work.session.selection.clear();
  hint("Escape");
}

void show_property_card(const Workspace& work, const Item& shown) {
  const Item item = shown;  // the rows below may change the site under it
  words(title_of(item), work.look.letters.title, palette::ink);
  words(std::string{kind_label(item.thing)}, work.look.letters.small, palette::quiet_ink);
  ImGui::PushID(item.id.number);
  show_selection_actions(work);
  ImGui::Dummy({0, work.look.px(2)});
  show_name(work, item);
  show_phase(work, item);
  std::string group;
  for (const FieldRow& row : session::field_rows(item.thing, work.units(), work.catalogs)) {
    if (row.group != group) words(row.group, work.look.letters.strong, palette::ink);
    group = row.group;
    show_row(work, item, row);
  }
  ImGui::PopID();
}

}  // namespace yardwright::panels
