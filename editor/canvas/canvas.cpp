#include "editor/canvas/canvas.hpp"

#include "editor/canvas/device.hpp"

namespace yardwright::canvas {

namespace {

void lay_out(session::View& view, const Rect& place) {
  view.top_left = {static_cast<double>(place.low.x), static_cast<double>(place.low.y)};
  view.width_px = static_cast<double>(place.high.x - place.low.x);
  view.height_px = static_cast<double>(place.high.y - place.low.y);
}

PlanStyle style_of(const Canvas& canvas, const session::Session& session, const look::Look& look) {
  PlanStyle style;
  style.units = session.site().units;
  style.metres_per_mm = look.px_per_mm() / canvas.view.px_per_m;
  style.built_phase = session.phase;
  style.pictures = canvas.pictures.of(session.site());
  return style;
}

}  // namespace

Placement placement_of(const session::View& view, const look::Look& look) {
  const ScreenPoint origin = to_screen(view, {0, 0});
  return {origin.x, origin.y, view.px_per_m, look.px_per_mm()};
}

ImDrawList& begin_plan(Canvas& canvas, session::Session& session, const Rect& place, const look::Look& look) {
  lay_out(canvas.view, place);
  if (session.look_at) {
    canvas.view = fitted(canvas.view, *session.look_at);
    session.look_at.reset();
  }
  ImGui::SetNextWindowPos(place.low);
  ImGui::SetNextWindowSize({place.high.x - place.low.x, place.high.y - place.low.y});
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0});
  ImGui::Begin("plan", nullptr,
               ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoMove |
                   ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoBringToFrontOnFocus |
                   ImGuiWindowFlags_NoScrollWithMouse);
  ImGui::PopStyleVar();
  point(canvas.pointer, {session, canvas.view, look},
        ImGui::IsWindowHovered(ImGuiHoveredFlags_AllowWhenBlockedByActiveItem));
  if (std::string told = canvas.pictures.read(session.site(), session.file); !told.empty())
    session.notice = std::move(told);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  draw(canvas.plan.drawing(session.site(), session.history.revision(), style_of(canvas, session, look)),
       placement_of(canvas.view, look), look, list);
  return list;
}

void end_plan(Canvas& canvas, const session::Session& session, const look::Look& look, ImDrawList& list) {
  const OverlayInput input{session, canvas.view, canvas.pointer, look};
  draw_selection(input, list);
  draw_tool(input, list);
  draw_scale_bar(input, list);
  draw_north_arrow(input, list);
  ImGui::End();
}

}  // namespace yardwright::canvas
