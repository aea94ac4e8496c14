#include "editor/panels/storm_chart.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "editor/panels/storm_time_line.hpp"
#include "editor/panels/widgets.hpp"
#include "geom/units/text.hpp"

namespace yardwright::panels {

namespace {

using drain::storm::PitStory;
using drain::storm::StormStory;

constexpr std::array<Colour, 5> colours{palette::water, palette::reach, palette::fuel, palette::ink, palette::pass};

/// From hours and metres to the screen.
struct ChartFrame : TimeFrame {
  double most_m;

  float y(double depth_m) const { return high.y - (high.y - low.y) * static_cast<float>(depth_m / most_m); }
};

double deepest_pit_m(const StormStory& story) {
  double most_m = 0.3;
  for (const PitStory& pit : story.pits) most_m = std::max(most_m, pit.rim_m - pit.floor_m);
  return most_m * 1.05;
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

}  // namespace

void draw_storm_chart(const Workspace& work, const std::shared_ptr<const session::StormRecord>& record,
                      const canvas::Rect& place) {
  const StormStory& story = record->story;
  words("The storm", work.look.letters.strong, palette::ink);
  ImGui::SameLine(0, work.look.px(12));
  words(
      "water over each pit's floor, rims dashed · drag the line to another moment · measure or select a line to cut "
      "the ground",
      work.look.letters.small, palette::quiet_ink);
  const float top = ImGui::GetCursorScreenPos().y + work.look.px(8);
  const ChartFrame frame{{{place.low.x + work.look.px(16), top},
                          {place.high.x - work.look.px(190), place.high.y - work.look.px(22)},
                          story.start_s,
                          story.end_s},
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
