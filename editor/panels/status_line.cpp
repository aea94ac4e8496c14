#include "editor/panels/status_line.hpp"

#include <algorithm>
#include <cmath>

#include "editor/panels/widgets.hpp"

namespace yardwright::panels {

void show_status_line(const Workspace& work, const canvas::Rect& plan) {
  const session::Session& session = work.session;
  const bool tells = !session.notice.empty();
  const std::string text = tells ? session.notice : session::instruction(session.tool);
  if (text.empty() || ImGui::IsPopupOpen(nullptr, ImGuiPopupFlags_AnyPopup)) return;
  ImDrawList& list = *ImGui::GetForegroundDrawList();
  ImFont* font = work.look.letters.small;
  const char *begin = text.data(), *end = begin + text.size();
  const float room = std::min(plan.high.x - plan.low.x - work.look.px(120), work.look.px(640));
  const ImVec2 size = font->CalcTextSizeA(font->FontSize, 1e6F, room, begin, end);
  const ImVec2 at{std::round((plan.low.x + plan.high.x - size.x) / 2),
                  std::round(plan.high.y - work.look.px(26) - size.y)};
  const ImVec2 low{at.x - work.look.px(12), at.y - work.look.px(6)},
      high{at.x + size.x + work.look.px(12), at.y + size.y + work.look.px(6)};
  list.AddRectFilled(low, high, look::packed(palette::ink.faded(0.92)), work.look.px(9));
  list.AddText(font, font->FontSize, at, look::packed(palette::white), begin, end, room);
}

}  // namespace yardwright::panels
