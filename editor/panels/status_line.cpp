#include "editor/panels/status_line.hpp"

#include <algorithm>
#include <cmath>

#include "editor/panels/widgets.hpp"

namespace yardwright::panels {

namespace {

std::string text_to_tell(const session::Session& session, const std::string& being_read) {
  if (!session.notice.empty()) return session.notice;
  if (!being_read.empty()) return "Reading " + being_read + " ...";
  if (session.site().items.empty() && session.tool.doing == session::Doing::select)
    return "Click a thing on the left, then where it stands on the plan.";
  return session::instruction(session.tool);
}

constexpr double scale_bar_room_px = 250;  ///< at the left of the plan's foot

}  // namespace

void show_status_line(const Workspace& work, const canvas::Rect& plan, const std::string& being_read) {
  const session::Session& session = work.session;
  const std::string text = text_to_tell(session, being_read);
  if (text.empty() || ImGui::IsPopupOpen(nullptr, ImGuiPopupFlags_AnyPopup)) return;
  ImDrawList& list = *ImGui::GetForegroundDrawList();
  ImFont* font = work.look.letters.small;
  const char *begin = text.data(), *end = begin + text.size();
  const float room = std::min(plan.high.x - plan.low.x - work.look.px(scale_bar_room_px + 40), work.look.px(640));
  const ImVec2 size = font->CalcTextSizeA(font->FontSize, 1e6F, room, begin, end);
  const float least = plan.low.x + work.look.px(scale_bar_room_px + 12);
  const ImVec2 at{std::round(std::max(least, (plan.low.x + plan.high.x - size.x) / 2)),
                  std::round(plan.high.y - work.look.px(26) - size.y)};
  const ImVec2 low{at.x - work.look.px(12), at.y - work.look.px(6)},
      high{at.x + size.x + work.look.px(12), at.y + size.y + work.look.px(6)};
  list.AddRectFilled(low, high, look::packed(palette::ink.faded(0.92)), work.look.px(9));
  list.AddText(font, font->FontSize, at, look::packed(palette::white), begin, end, room);
}

}  // namespace yardwright::panels
