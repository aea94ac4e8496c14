#include "editor/panels/storm_card.hpp"

#include <fmt/format.h>

#include "editor/panels/finding_card.hpp"
#include "editor/panels/widgets.hpp"
#include "geom/drain/storm/storm_words.hpp"
#include "geom/site/footprint.hpp"

namespace yardwright::panels {

namespace {

using namespace drain::storm;

constexpr std::string_view failed_pump_key = "pump-fails:";

std::string key_of(const StormOptions& options) {
  if (options.mishap == Mishap::pump_fails)
    return std::string{failed_pump_key} + std::to_string(options.failed_pump.number);
  return std::string{names_of(options.mishap)[static_cast<std::size_t>(options.mishap)]};
}

/// Everything works, the power fails, each pump fails, inlets are half blocked, tile lines are full.
std::vector<session::Choice> mishaps_of(const Site& site) {
  std::vector<StormOptions> all(4);
  all[1].mishap = Mishap::power_fails;
  all[2].mishap = Mishap::inlets_half_blocked;
  all[3].mishap = Mishap::tiles_full;
  for (const Item& item : site.items) {
    const PitBody* body = pit_body(item.thing);
    if (body == nullptr || body->pump_m3_per_s <= 0) continue;
    all.push_back({});
    all.back().mishap = Mishap::pump_fails;
    all.back().failed_pump = item.id;
  }
  std::vector<session::Choice> choices;
  for (const StormOptions& options : all) choices.push_back({key_of(options), mishap_words(site, options)});
  return choices;
}

void choose(StormOptions& options, const std::string& key) {
  options.failed_pump = {};
  if (key.starts_with(failed_pump_key)) {
    options.mishap = Mishap::pump_fails;
    options.failed_pump = ItemId{std::stoi(key.substr(failed_pump_key.size()))};
    return;
  }
  for (const Mishap mishap : {Mishap::none, Mishap::power_fails, Mishap::inlets_half_blocked, Mishap::tiles_full})
    if (key == names_of(mishap)[static_cast<std::size_t>(mishap)]) options.mishap = mishap;
}

void show_progress(const Workspace& work) {
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const ImVec2 low = ImGui::GetCursorScreenPos();
  const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
  const auto done = static_cast<float>(work.storms.done_ratio());
  const ImVec2 high{right, low.y + work.look.px(8)};
  list.AddRectFilled(low, high, look::packed(palette::rule_line), work.look.px(4));
  list.AddRectFilled(low, {low.x + (high.x - low.x) * done, high.y}, look::packed(palette::water), work.look.px(4));
  ImGui::Dummy({0, work.look.px(12)});
  words(fmt::format("raining ... {:.0f} %", 100 * static_cast<double>(done)), work.look.letters.small,
        palette::quiet_ink);
  ImGui::SameLine(0, work.look.px(10));
  if (pill("stop", work.look)) work.storms.stop();
}

void show_start(const Workspace& work) {
  StormOptions& options = work.state.storm_options;
  const float width = ImGui::GetWindowContentRegionMax().x - ImGui::GetCursorPosX();
  if (const auto chosen = choice_field("##mishap", mishaps_of(work.session.site()), key_of(options), width))
    choose(options, *chosen);
  if (work.storms.is_running()) return show_progress(work);
  if (pill("let it rain", work.look, true)) work.storms.run(as_of(work.session.site(), work.session.phase), options);
  hint("Runs the heaviest three hours of the yard's storm over the ground, beside your work.");
  if (work.session.site().storm.table.known()) {
    ImGui::SameLine(0, work.look.px(8));
    if (pill("and how often", work.look))
      work.storms.run(as_of(work.session.site(), work.session.phase), options, session::StormAsk::how_often);
    hint("Runs the storms of the rain table too, and tells how often each thing happens.");
  }
  for (const Problem& problem : work.storms.refusal())
    words(sentence(problem), work.look.letters.small, palette::fail, true);
}

/// What the storm told; of a yard that has been changed since, without the mends that would put it back.
void show_told(const Workspace& work, const session::StormRecord& record) {
  const bool fresh = is_of(record, as_of(work.session.site(), work.session.phase));
  if (record.story.stopped) words("Stopped on the way.", work.look.letters.small, palette::caution, true);
  if (!fresh)
    words("The yard has been changed since; let it rain again.", work.look.letters.small, palette::caution, true);
  const char* toggle = work.state.shows_storm ? "hide its water" : "show its water";
  if (pill(toggle, work.look)) work.state.shows_storm = !work.state.shows_storm;
  hint("The water on the plan is that of the moment under the line in the side view; drag the line.");
  ImGui::Dummy({0, work.look.px(4)});
  for (Finding finding : record.findings) {
    if (!fresh) finding.mends.clear();
    show_finding_card(work, finding);
  }
}

}  // namespace

void show_storm_card(const Workspace& work) {
  words("The storm itself", work.look.letters.strong, palette::ink);
  words("Minute by minute over the ground and into the pits.", work.look.letters.small, palette::quiet_ink, true);
  show_start(work);
  if (const auto record = work.storms.record()) show_told(work, *record);
  ImGui::Dummy({0, work.look.px(6)});
  words("Standing water, as you draw", work.look.letters.strong, palette::ink);
}

}  // namespace yardwright::panels
