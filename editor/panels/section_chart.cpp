#include "editor/panels/section_chart.hpp"

#include <fmt/format.h>

#include "editor/canvas/device.hpp"
#include "editor/panels/storm_time_line.hpp"
#include "editor/panels/widgets.hpp"
#include "geom/units/text.hpp"

namespace yardwright::panels {

namespace {

constexpr double time_line_px = 40;

using Record = std::shared_ptr<const session::StormRecord>;

std::string told_of(const Workspace& work, const session::ShownLine& line, const SectionDrawing& drawing,
                    const Record& storm) {
  const SectionCache& section = work.state.section;
  std::string told = fmt::format("{}, {} · {} · dashed: ground as it lies", line.title,
                                 text_of(section.view().ground.length_m(), Quantity::length, work.units()),
                                 exaggeration_words(drawing.exaggeration));
  if (shows_groundwater(section.view())) told += " · dash and dot: highest groundwater";
  if (storm != nullptr)
    told += section.is_storm_of_before() ? " · water of the yard before it was changed" : " · dotted: deepest water";
  if (drawing.unnamed > 0)
    told += fmt::format(" · no room for {} more name{}", drawing.unnamed, drawing.unnamed == 1 ? "" : "s");
  return told;
}

void draw_time_line(const Workspace& work, const Record& storm, const canvas::Rect& place, ImDrawList& list) {
  const TimeFrame frame{{place.low.x + work.look.px(16), place.high.y - work.look.px(time_line_px - 6)},
                        {place.high.x - work.look.px(66), place.high.y - work.look.px(20)},
                        storm->story.start_s,
                        storm->story.end_s};
  draw_hours(work, frame, list);
  draw_moment(work, frame, list);
}

/// The drawing's millimetres on the screen, from the top left corner of its place.
Placement on_screen(const Placement& in_mm, ImVec2 corner, double px_per_mm) {
  return {static_cast<double>(corner.x) + in_mm.origin_x * px_per_mm,
          static_cast<double>(corner.y) + in_mm.origin_y * px_per_mm, in_mm.per_unit * px_per_mm, px_per_mm};
}

}  // namespace

void draw_section_chart(const Workspace& work, const session::ShownLine& line, const canvas::Rect& place,
                        const std::string& hint) {
  const Record storm = work.state.shows_storm ? work.storms.record() : nullptr;
  SectionCache& section = work.state.section;
  section.cut(line, work.session, work.answers.surface);
  section.wet(storm, work.state.storm_time_s);
  const double mm = work.look.px_per_mm();
  const ImVec2 corner{place.low.x + work.look.px(12), place.low.y + work.look.px(32)};
  const float bottom = place.high.y - work.look.px(storm == nullptr ? 4 : time_line_px);
  const SectionDrawing drawing =
      section_drawing(section.view(), {static_cast<double>(place.high.x - work.look.px(8) - corner.x) / mm,
                                       static_cast<double>(bottom - corner.y) / mm,
                                       work.units(),
                                       {}});
  words("Section", work.look.letters.strong, palette::ink);
  ImGui::SameLine(0, work.look.px(12));
  if (drawing.drawing.marks.empty())
    return words(line.title + " lies beyond the known ground", work.look.letters.small, palette::quiet_ink);
  words(told_of(work, line, drawing, storm) + (hint.empty() ? "" : " · " + hint), work.look.letters.small,
        palette::quiet_ink);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  canvas::draw(drawing.drawing, on_screen(drawing.placement, corner, mm), work.look, list);
  if (storm != nullptr) draw_time_line(work, storm, place, list);
}

}  // namespace yardwright::panels
