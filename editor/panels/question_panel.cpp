#include "editor/panels/question_panel.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "editor/panels/finding_card.hpp"
#include "editor/panels/grow_card.hpp"
#include "editor/panels/property_card.hpp"
#include "editor/panels/proposal_card.hpp"
#include "editor/panels/settings.hpp"
#include "editor/panels/storm_card.hpp"
#include "editor/panels/widgets.hpp"
#include "editor/panels/yard_card.hpp"
#include "editor/session/question_words.hpp"
#include "geom/drain/pit_words.hpp"
#include "geom/units/text.hpp"

namespace yardwright::panels {

namespace {

std::shared_ptr<const session::StormRecord> fresh_storm(const Workspace& work) {
  auto record = work.storms.record();
  return record != nullptr && is_of(*record, as_of(work.session.site(), work.session.phase)) ? record : nullptr;
}

/// Of the last storm, while it is still that of the yard.
std::optional<double> storm_inflow(const Workspace& work, ItemId pit) {
  const auto record = fresh_storm(work);
  if (record == nullptr) return std::nullopt;
  const auto told = std::ranges::find(record->story.pits, pit, &drain::storm::PitStory::item);
  return told == record->story.pits.end() ? std::nullopt : std::optional{told->highest_inflow_m3_per_s()};
}

/// What the storm brings to each pit.
void show_pits(const Workspace& work) {
  const auto& letters = work.look.letters;
  const Site& site = work.session.site();
  for (const drain::PitWater& pit : work.answers.drain->pits) {
    const Item* item = find(site, pit.item);
    if (item == nullptr) continue;
    ImGui::Dummy({0, work.look.px(4)});
    words(fmt::format("{} gets the rain of {}", title_of(*item), text_of(pit.catchment_m2, Quantity::area, site.units)),
          letters.small, palette::ink, true);
    for (const std::string& line : drain::runoff_words(pit, site.units))
      words(line, letters.small, palette::quiet_ink, true);
    if (const auto inflow_m3_per_s = storm_inflow(work, pit.item))
      words(text_of(*inflow_m3_per_s, Quantity::flow, site.units) + " at most into the pit in the storm itself",
            letters.small, palette::quiet_ink, true);
  }
}

void show_question(const Workspace& work) {
  const Question question = work.session.question;
  const auto& letters = work.look.letters;
  words(std::string{session::name_of(question)}, letters.title, palette::ink);
  if (pill_at_right("about the yard", work.look)) work.state.shows_yard = true;
  hint("Title block, lot, phases, storm, ground and pictures.");
  words(std::string{session::asks(question)}, letters.small, palette::quiet_ink, true);
  ImGui::Dummy({0, work.look.px(4)});
  if (question == Question::drain) show_storm_card(work);
  if (question == Question::grow) {
    show_grow_card(work);
    show_proposal_card(work);
  }
  const Findings& findings = findings_of(work.answers, question);
  if (findings.empty()) words("There is nothing on the plan to ask this of.", letters.small, palette::quiet_ink, true);
  for (const Finding& finding : findings) show_finding_card(work, finding);
  if (question == Question::drain) show_pits(work);
  show_settings(work, question);
}

bool is_about(const Finding& finding, ItemId id) { return std::ranges::find(finding.items, id) != finding.items.end(); }

void show_selected(const Workspace& work, const Item& item) {
  show_property_card(work, item);
  ImGui::Dummy({0, work.look.px(6)});
  const ItemId id = item.id;
  const auto storm = work.session.question == Question::drain ? fresh_storm(work) : nullptr;
  for (const Finding& finding : storm != nullptr ? storm->findings : Findings{}) {
    if (is_about(finding, id)) show_finding_card(work, finding);
  }
  for (const Finding& finding : findings_of(work.answers, work.session.question)) {
    if (is_about(finding, id)) show_finding_card(work, finding);
  }
}

void show_several(const Workspace& work) {
  words(std::to_string(work.session.selection.size()) + " things selected", work.look.letters.title, palette::ink);
  show_selection_actions(work);
}

}  // namespace

void show_right_side(const Workspace& work, const canvas::Rect& place) {
  begin_panel("right", place, true);
  const Item* item = session::lone_selected(work.session);
  const auto edge = session::selected_lot_edge(work.session);
  if (work.session.tool.doing == session::Doing::fit)
    show_fit_card(work);
  else if (item != nullptr)
    show_selected(work, *item);
  else if (edge)
    show_lot_edge_card(work, *edge);
  else if (work.session.selection.size() > 1)
    show_several(work);
  else if (work.state.shows_yard)
    show_yard_card(work);
  else
    show_question(work);
  ImGui::Dummy({0, work.look.px(10)});
  words("Planning aid. Local code, the utility and licensed engineers decide.", work.look.letters.small,
        palette::quiet_ink, true);
  ImGui::End();
}

}  // namespace yardwright::panels
