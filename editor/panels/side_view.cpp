#include "editor/panels/side_view.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "editor/canvas/reach_overlay.hpp"
#include "editor/panels/side_scene.hpp"
#include "editor/panels/widgets.hpp"

namespace yardwright::panels {

namespace {

bool names(const std::vector<ItemId>& ids, const reach::CheckedSpout& spout) {
  const auto has = [&](ItemId id) { return std::ranges::find(ids, id) != ids.end(); };
  return has(spout.spout) || has(spout.receiver);
}

double shortfall(const reach::CheckedSpout& spout) { return spout.least_slope.as_degrees() - spout.line.slope().as_degrees(); }

const Finding* pointed(const session::Session& session, const Answers& answers) {
  for (const Finding& finding : answers.reach->findings) {
    if (finding.id == session.pointed_finding) return &finding;
  }
  return nullptr;
}

/// "the south-east": where one stands who sees the leg at the left.
std::string_view seen_from(const reach::CheckedSpout& spout) {
  static constexpr std::string_view ways[] = {"north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"};
  const Bearing from = bearing_of(spout.line.to - spout.line.from).turned(Angle::degrees(90));
  return ways[static_cast<std::size_t>(from.as_degrees() / 45 + 0.5) % 8];
}

void show_heading(const Workspace& work, const std::string& told) {
  words("Side view", work.look.letters.strong, palette::ink);
  ImGui::SameLine(0, work.look.px(12));
  words(told, work.look.letters.small, palette::quiet_ink);
}

}  // namespace

const reach::CheckedSpout* seen_spout(const session::Session& session, const Answers& answers) {
  const auto& spouts = answers.reach->spouts;
  for (const reach::CheckedSpout& spout : spouts) {
    if (names(session.selection, spout)) return &spout;
  }
  if (const Finding* finding = pointed(session, answers)) {
    for (const reach::CheckedSpout& spout : spouts) {
      if (names(finding->items, spout)) return &spout;
    }
  }
  const auto worst = std::ranges::max_element(spouts, {}, shortfall);
  return worst == spouts.end() ? nullptr : &*worst;
}

void show_side_view(const Workspace& work, const canvas::Rect& place) {
  begin_panel("side", place, palette::card);
  const reach::CheckedSpout* spout = seen_spout(work.session, work.answers);
  const Site& site = work.session.site();
  const Item* leg = spout != nullptr ? find(site, spout->leg) : nullptr;
  const Item* receiver = spout != nullptr ? find(site, spout->receiver) : nullptr;
  if (leg == nullptr || receiver == nullptr || as<Leg>(*leg) == nullptr) {
    show_heading(work, "appears once a spout joins a leg and what it fills");
  } else {
    show_heading(work, fmt::format("{} → {}, seen from the {} · to scale, levels in {}", title_of(*leg), title_of(*receiver), seen_from(*spout),
                                   shown_unit(Quantity::length, work.units()).suffix));
    const Verdict verdict = canvas::verdict_on(work.answers.reach->findings, spout->spout);
    draw_side_scene({work, *spout, *std::get_if<Leg>(&leg->thing), *receiver, verdict}, place);
  }
  ImGui::End();
}

}  // namespace yardwright::panels
