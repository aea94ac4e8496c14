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

using drain::storm::CurvesOf;
using drain::storm::StormCurve;

constexpr std::array<Colour, 5> colours{palette::water, palette::reach, palette::fuel, palette::ink, palette::pass};

/// From hours and the curves' own quantity to the screen.
struct ChartFrame : TimeFrame {
  double most;

  float y(double value) const { return high.y - (high.y - low.y) * static_cast<float>(value / most); }
};

double top_of(const std::vector<StormCurve>& curves, CurvesOf what) {
  double most = what == CurvesOf::pit_depths ? 0.3 : 1e-4;
  for (const StormCurve& curve : curves) most = std::max({most, curve.most(), curve.rim_height.value_or(0)});
  return most * 1.05;
}

const std::vector<session::Choice>& choices() {
  static const std::vector<session::Choice> all{{"pit-depths", "water over each pit's floor, rims dashed"},
                                                {"pit-flows", "what runs into the pits, and is pumped out"},
                                                {"pipe-flows", "what culverts, tile lines and grates carry"},
                                                {"leaving", "what runs off the known ground"}};
  return all;
}

void choose_curves(const Workspace& work) {
  CurvesOf& now = work.state.storm_curves;
  constexpr auto names = names_of(CurvesOf{});
  const auto chosen =
      choice_field("##curves", choices(), std::string{names[static_cast<std::size_t>(now)]}, work.look.px(280));
  if (chosen) now = static_cast<CurvesOf>(std::ranges::find(names, *chosen) - names.begin());
}

/// The story's times are those of every curve.
void draw_curve(const Workspace& work, const ChartFrame& frame, const StormCurve& curve,
                const std::vector<double>& times_s, Colour colour, ImDrawList& list) {
  std::vector<ImVec2> points;
  for (std::size_t i = 0; i < std::min(curve.values.size(), times_s.size()); ++i)
    points.push_back({frame.x(times_s[i]), frame.y(curve.values[i])});
  list.AddPolyline(points.data(), static_cast<int>(points.size()), look::packed(colour), ImDrawFlags_None,
                   work.look.px(2));
  if (!curve.rim_height) return;
  const float rim_y = frame.y(*curve.rim_height);
  for (float x = frame.low.x; x < frame.high.x; x += work.look.px(9))
    list.AddLine({x, rim_y}, {x + work.look.px(4), rim_y}, look::packed(colour), work.look.px(1));
}

void draw_curves(const Workspace& work, const ChartFrame& frame, const std::vector<StormCurve>& curves,
                 const std::vector<double>& times_s, ImDrawList& list) {
  const Quantity quantity = quantity_of(work.state.storm_curves);
  for (std::size_t i = 0; i < curves.size(); ++i) {
    const Colour colour = colours[i % colours.size()];
    draw_curve(work, frame, curves[i], times_s, colour, list);
    const float words_y = frame.low.y + static_cast<float>(i) * work.look.letters.small->FontSize * 1.4F;
    words_at(list, {frame.high.x + work.look.px(10), words_y},
             curves[i].name + ": " + text_of(curves[i].most(), quantity, work.units()) + " at most",
             work.look.letters.small, colour);
  }
  if (curves.empty())
    words_at(list, {frame.high.x + work.look.px(10), frame.low.y}, "none in this yard", work.look.letters.small,
             palette::quiet_ink);
}

}  // namespace

void draw_storm_chart(const Workspace& work, const std::shared_ptr<const session::StormRecord>& record,
                      const canvas::Rect& place) {
  const drain::storm::StormStory& story = record->story;
  words("The storm", work.look.letters.strong, palette::ink);
  ImGui::SameLine(0, work.look.px(12));
  choose_curves(work);
  ImGui::SameLine(0, work.look.px(12));
  words("drag the line to another moment · measure or select a line to cut the ground", work.look.letters.small,
        palette::quiet_ink);
  const auto curves = storm_curves(record->site, story, work.state.storm_curves);
  const float top = ImGui::GetCursorScreenPos().y + work.look.px(8);
  const ChartFrame frame{{{place.low.x + work.look.px(16), top},
                          {place.high.x - work.look.px(210), place.high.y - work.look.px(22)},
                          story.start_s,
                          story.end_s},
                         top_of(curves, work.state.storm_curves)};
  if (frame.high.y - frame.low.y < work.look.px(20) || frame.high.x - frame.low.x < work.look.px(60)) return;
  ImDrawList& list = *ImGui::GetWindowDrawList();
  draw_hours(work, frame, list);
  draw_curves(work, frame, curves, story.times_s, list);
  draw_moment(work, frame, list);
}

}  // namespace yardwright::panels
