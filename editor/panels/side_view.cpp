#include "editor/panels/side_view.hpp"

#include <fmt/format.h>

#include "editor/panels/section_chart.hpp"
#include "editor/panels/side_scene.hpp"
#include "editor/panels/storm_chart.hpp"
#include "editor/panels/widgets.hpp"
#include "editor/session/seen_reach.hpp"

namespace yardwright::panels {

namespace {

/// "the south-east": where one stands who sees the leg at the left.
std::string_view seen_from(const reach::CheckedSpout& spout) {
  return compass_point(bearing_of(spout.line.to - spout.line.from).turned(Angle::degrees(90)));
}

void show_heading(const Workspace& work, const std::string& told, const char* heading = "Side view") {
  words(heading, work.look.letters.strong, palette::ink);
  ImGui::SameLine(0, work.look.px(12));
  words(told, work.look.letters.small, palette::quiet_ink);
}

/// The ground along a line, else the storm in the pits, else what to do for a section.
void show_drain_side(const Workspace& work, const canvas::Rect& place) {
  const auto line = session::shown_line(work.session);
  const bool known = work.answers.surface.known();
  const auto storm = work.storms.record();
  if (line && known) return draw_section_chart(work, *line, place);
  if (storm != nullptr) return draw_storm_chart(work, storm, place);
  if (!known) return show_heading(work, "this yard has no ground to cut: bring in levels (file)", "Section");
  if (const auto through = session::line_through_place(work.session, work.answers))
    return draw_section_chart(work, *through, place, "select or measure a line to cut along it");
  show_heading(work, "select a drive, berm, swale, culvert or tunnel, or measure: the ground is cut along it",
               "Section");
}

}  // namespace

void show_side_view(const Workspace& work, const canvas::Rect& place) {
  begin_panel("side", place);
  if (work.session.question == Question::drain) {
    show_drain_side(work, place);
    ImGui::End();
    return;
  }
  const reach::CheckedSpout* spout = session::seen_spout(work.session, work.answers);
  const Site& site = work.session.site();
  const Item* leg = spout != nullptr ? find(site, spout->leg) : nullptr;
  const Item* receiver = spout != nullptr ? find(site, spout->receiver) : nullptr;
  if (leg == nullptr || receiver == nullptr || as<Leg>(*leg) == nullptr) {
    show_heading(work, "appears once a spout joins a leg and what it fills");
  } else {
    show_heading(work,
                 fmt::format("{} → {}, seen from the {} · to scale, levels in {}", title_of(*leg), title_of(*receiver),
                             seen_from(*spout), shown_unit(Quantity::length, work.units()).suffix));
    const Verdict verdict = verdict_on(work.answers.reach->findings, spout->spout);
    draw_side_scene({work, *spout, *std::get_if<Leg>(&leg->thing), *receiver, verdict}, place);
  }
  ImGui::End();
}

}  // namespace yardwright::panels
