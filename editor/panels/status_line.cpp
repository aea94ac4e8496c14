#include "editor/panels/status_line.hpp"

#include "editor/panels/widgets.hpp"

namespace yardwright::panels {

void show_status_line(const Workspace& work, const canvas::Rect& plan) {
  const session::Session& session = work.session;
  const bool tells = !session.notice.empty();
  const std::string text = tells ? session.notice : session::instruction(session.tool);
  if (text.empty() || ImGui::IsPopupOpen(nullptr, ImGuiPopupFlags_AnyPopup)) return;
  ImDrawList& list = *ImGui::GetForegroundDrawList();
  ImFont* font = work.look.letters.small;
  const float width = width_of(text, font), height = font->FontSize;
  const float x = (plan.low.x + plan.high.x - width) / 2, y = plan.high.y - work.look.px(26) - height;
  const ImVec2 low{x - work.look.px(12), y - work.look.px(6)}, high{x + width + work.look.px(12), y + height + work.look.px(6)};
  list.AddRectFilled(low, high, look::packed(palette::ink.faded(0.92)), work.look.px(9));
  words_at(list, {x, y}, text, font, palette::white);
}

}  // namespace yardwright::panels
