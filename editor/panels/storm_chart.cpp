#include "editor/panels/storm_chart.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "editor/panels/widgets.hpp"
#include "geom/units/text.hpp"

namespace yardwright::panels {

namespace {

using drain::storm::PitStory;
using drain::storm::StormStory;

constexpr std::array<Colour, 5> colours{palette::water, palette::reach, palette::fuel, palette::ink, palette::pass};

/// From hours and metres to the screen.
struct ChartFrame {
  ImVec2 low, high;  ///< of the field, top left and bottom right
  double start_s, end_s, most_m;

  float x(double time_s) const {
    return low.x + (high.x - low.x) * static_cast<float>((time_s - start_s) / std::max(1.0, end_s - start_s));
  }
  float y(double depth_m) const { return high.y - (high.y - low.y) * static_cast<float>(depth_m / most_m); }
  double time_s(float at_x) const {
    const double share = static_cast<double>((at_x - low.x) / (high.x - low.x));
    return start_s + std::clamp(share, 0.0, 1.0) * (end_s - start_s);
  }
};

double deepest_pit_m(const StormStory& story) {
  double most_m = 0.3;
  for (const PitStory& pit : story.pits) most_m = std::max(most_m, pit.rim_m - pit.floor_m);
  return most_m * 1.05;
}

void draw_hours(const Workspace& work, const ChartFrame& frame, ImDrawList& list) {
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

void draw_pit(const Workspace& work, const ChartFrame& frame, const PitStory& pit, Colour colour, float words_y,
              ImDrawList& list) {
  std::vector<ImVec2> points;
  for (const auto& sample : pit.samples)
    points.push_back({frame.x(sample.time_s), frame.y(std::max(0.0, sample.level_m - pit.floor_m))});
  list.AddPolyline(points.data(), static_cast<int>(points.size()), look::packed(colour), ImDrawFlags_None,
                   work.look.px(2));
  const float rim_y = frame.y(pit.rim_m - pit.floor_m);
  for (float x = frame.low.x; x < frame.high.x; x += work.look.px(9))
    list.AddLine({x, rim_y}, {x + work.look.px(4), rim_y}, look::packed(colour), work.look.px(1));
  const Item* item = find(work.session.site(), pit.item);
  const std::string name = item == nullptr ? "a pit that is gone" : title_of(*item);
  const std::string depth = text_of(pit.highest_m - pit.floor_m, Quantity::length, work.units());
  words_at(list, {frame.high.x + work.look.px(10), words_y}, name + ": " + depth + " at most", work.look.letters.small,
           colour);
}

/// A new storm is shown when most water runs.
void go_to_height(const Workspace& work, const std::shared_ptr<const session::StormRecord>& record) {
  if (work.state.storm_seen == record) return;
  work.state.storm_seen = record;
  const StormStory& story = record->story;
  const auto most = std::ranges::max_element(story.leaving_m3_per_s) - story.leaving_m3_per_s.begin();
  work.state.storm_time_s = story.times_s[static_cast<std::size_t>(most)];
}

void draw_moment(const Workspace& work, const ChartFrame& frame, ImDrawList& list) {
  double& moment_s = work.state.storm_time_s;
  moment_s = std::clamp(moment_s, frame.start_s, frame.end_s);
  ImGui::SetCursorScreenPos(frame.low);
  ImGui::InvisibleButton("moment", {frame.high.x - frame.low.x, frame.high.y - frame.low.y});
  if (ImGui::IsItemActive()) moment_s = frame.time_s(ImGui::GetIO().MousePos.x);
  const float x = frame.x(moment_s);
  list.AddLine({x, frame.low.y - work.look.px(4)}, {x, frame.high.y}, look::packed(palette::fail), work.look.px(1.5));
  const std::string told = fmt::format("hour {:.2f}", moment_s / 3600);
  const float width = width_of(told, work.look.letters.small);
  words_at(list, {std::min(x + work.look.px(4), frame.high.x - width), frame.low.y - work.look.px(4)}, told,
           work.look.letters.small, palette::fail);
}

}  // namespace

void draw_storm_chart(const Workspace& work, const std::shared_ptr<const session::StormRecord>& record,
                      const canvas::Rect& place) {
  go_to_height(work, record);
  const StormStory& story = record->story;
  words("The storm", work.look.letters.strong, palette::ink);
  ImGui::SameLine(0, work.look.px(12));
  words("water over the floor of each pit, its rim dashed · drag the line to see another moment on the plan",
        work.look.letters.small, palette::quiet_ink);
  const float top = ImGui::GetCursorScreenPos().y + work.look.px(8);
  const ChartFrame frame{{place.low.x + work.look.px(16), top},
                         {place.high.x - work.look.px(190), place.high.y - work.look.px(22)},
                         story.start_s,
                         story.end_s,
                         deepest_pit_m(story)};
  if (frame.high.y - frame.low.y < work.look.px(20) || frame.high.x - frame.low.x < work.look.px(60)) return;
  ImDrawList& list = *ImGui::GetWindowDrawList();
  draw_hours(work, frame, list);
  for (std::size_t i = 0; i < story.pits.size(); ++i) {
    const float words_y = top + static_cast<float>(i) * work.look.letters.small->FontSize * 1.4F;
    draw_pit(work, frame, story.pits[i], colours[i % colours.size()], words_y, list);
  }
  draw_moment(work, frame, list);
}

}  // namespace yardwright::panels
