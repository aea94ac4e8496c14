#include "editor/panels/storm_time_line.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "editor/panels/widgets.hpp"

namespace yardwright::panels {

float TimeFrame::x(double time_s) const {
  return low.x + (high.x - low.x) * static_cast<float>((time_s - start_s) / std::max(1.0, end_s - start_s));
}

double TimeFrame::time_s(float at_x) const {
  const double share = static_cast<double>((at_x - low.x) / (high.x - low.x));
  return start_s + std::clamp(share, 0.0, 1.0) * (end_s - start_s);
}

void go_to_height(const Workspace& work) {
  const auto record = work.storms.record();
  if (record == nullptr || work.state.storm_seen == record) return;
  work.state.storm_seen = record;
  const drain::storm::StormStory& story = record->story;
  const auto most = std::ranges::max_element(story.leaving_m3_per_s) - story.leaving_m3_per_s.begin();
  work.state.storm_time_s = story.times_s[static_cast<std::size_t>(most)];
}

void draw_hours(const Workspace& work, const TimeFrame& frame, ImDrawList& list) {
  const ImU32 ruled = look::packed(palette::rule_line);
  list.AddLine({frame.low.x, frame.high.y}, frame.high, look::packed(palette::quiet_ink), work.look.px(1));
  const double hours = (frame.end_s - frame.start_s) / 3600, every_h = hours > 12 ? 2 : hours > 5 ? 1 : 0.5;
  for (double hour = std::ceil(frame.start_s / 3600 / every_h) * every_h; hour * 3600 <= frame.end_s; hour += every_h) {
    const float x = frame.x(hour * 3600);
    list.AddLine({x, frame.low.y}, {x, frame.high.y}, ruled, work.look.px(1));
    words_at(list, {x + work.look.px(3), frame.high.y + work.look.px(2)}, fmt::format("{:g} h", hour),
             work.look.letters.small, palette::quiet_ink);
  }
}

void draw_moment(const Workspace& work, const TimeFrame& frame, ImDrawList& list) {
  double& moment_s = work.state.storm_time_s;
  moment_s = std::clamp(moment_s, frame.start_s, frame.end_s);
  const float words_below = work.look.letters.small->FontSize + work.look.px(2), above = work.look.px(4);
  ImGui::SetCursorScreenPos({frame.low.x, frame.low.y - above});
  ImGui::InvisibleButton("moment", {frame.high.x - frame.low.x, frame.high.y - frame.low.y + above + words_below});
  if (ImGui::IsItemActive()) moment_s = frame.time_s(ImGui::GetIO().MousePos.x);
  const float x = frame.x(moment_s);
  list.AddLine({x, frame.low.y - work.look.px(4)}, {x, frame.high.y}, look::packed(palette::fail), work.look.px(1.5));
  const std::string told = fmt::format("hour {:.2f}", moment_s / 3600);
  const float width = width_of(told, work.look.letters.small);
  words_at(list, {std::min(x + work.look.px(4), frame.high.x - width), frame.low.y - work.look.px(4)}, told,
           work.look.letters.small, palette::fail);
}

}  // namespace yardwright::panels
