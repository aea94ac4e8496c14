#include "editor/panels/layout.hpp"

namespace yardwright::panels {

void show_edges(const Layout& layout, const look::Look& look) {
  if (ImGui::IsPopupOpen(nullptr, ImGuiPopupFlags_AnyPopup)) return;  // they would cross it
  ImDrawList& list = *ImGui::GetForegroundDrawList();
  const auto edge = [&](ImVec2 from, ImVec2 to) {
    list.AddLine(from, to, look::packed(palette::rule_line), look.px(1));
  };
  edge({layout.top.low.x, layout.top.high.y}, layout.top.high);
  edge({layout.tray.high.x, layout.tray.low.y}, layout.tray.high);
  edge(layout.right.low, {layout.right.low.x, layout.right.high.y});
  if (layout.has_side) edge(layout.side.low, {layout.side.high.x, layout.side.low.y});
}

}  // namespace yardwright::panels
