#include "editor/panels/property_card.hpp"

#include "editor/panels/field_row.hpp"
#include "editor/session/shown_rows.hpp"

namespace yardwright::panels {

namespace {

using session::Choice;
using session::FieldRow;

void take(const Workspace& work, const Item& item, const FieldRow& row, const std::string& text) {
  const auto thing = session::with_field(item.thing, row.key, text, work.units());
  keep_refusal(work, row.key, thing ? nullptr : &thing.error());
  if (!thing) return;
  Item other = item;
  other.thing = *thing;
  session::perform(work.session, {PutItem{std::move(other)}});
}

void show_row(const Workspace& work, const Item& item, const FieldRow& row) {
  if (const auto typed = field_row(work, row)) take(work, item, row, *typed);
}

void show_name(const Workspace& work, const Item& item) {
  row_label(work, "name", "how it is called on the plan");
  if (const auto typed = typed_field(work.state.typing, "##item name", item.name, room_for_field())) {
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
  if (const auto chosen = choice_field("##built", choices, std::to_string(item.phase), room_for_field()))
    other.phase = std::stoi(*chosen);
  if (phases.size() > 1) {
    row_label(work, "taken away in", "the phase in which it goes");
    const std::string now = item.gone_in ? std::to_string(*item.gone_in) : "";
    const auto chosen = choice_field("##gone", gone, now, room_for_field());
    if (chosen) other.gone_in = chosen->empty() ? std::nullopt : std::optional{std::stoi(*chosen)};
  }
  if (!(other == item)) session::perform(work.session, {PutItem{std::move(other)}});
}

/// A spout without a name is called by what it fills.
std::string card_title(const Site& site, const Item& item) {
  const Spout* spout = as<Spout>(item);
  const Item* filled = spout != nullptr ? find(site, spout->to) : nullptr;
  return filled != nullptr && item.name.empty() ? "Spout to " + title_of(*filled) : title_of(item);
}

}  // namespace

void show_selection_actions(const Workspace& work) {
  const Item* lone = session::lone_selected(work.session);
  if (lone == nullptr || as<Spout>(*lone) == nullptr) {  // a spout lies between what it joins
    if (pill("turn 15°", work.look)) session::turn_selected(work.session, Angle::degrees(15));
    ImGui::SameLine();
    if (pill("duplicate", work.look)) session::duplicate_selected(work.session);
    hint("Ctrl+D");
    ImGui::SameLine();
  }
  if (pill("remove", work.look)) session::remove_selected(work.session);
  hint("Delete");
  ImGui::SameLine();
  if (pill("done", work.look)) session::select_nothing(work.session);
  hint("Escape");
}

void show_property_card(const Workspace& work, const Item& shown) {
  const Item item = shown;  // the rows below may change the site under it
  words(card_title(work.session.site(), item), work.look.letters.title, palette::ink);
  words(std::string{kind_label(item.thing)}, work.look.letters.small, palette::quiet_ink);
  ImGui::PushID(item.id.number);
  show_selection_actions(work);
  if (as<Picture>(item) != nullptr && pill("fit it by two points", work.look, true))
    session::take_tool(work.session, session::fit_tool(item.id));
  ImGui::Dummy({0, work.look.px(2)});
  show_name(work, item);
  show_phase(work, item);
  std::string group;
  for (const FieldRow& row : session::shown_rows(item.thing, work.units(), work.catalogs)) {
    if (row.group != group) words(row.group, work.look.letters.strong, palette::ink);
    group = row.group;
    show_row(work, item, row);
  }
  ImGui::PopID();
}

}  // namespace yardwright::panels
