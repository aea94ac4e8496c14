#include "editor/panels/tray.hpp"

#include "editor/panels/widgets.hpp"

namespace yardwright::panels {

namespace {

struct Entry {
  std::string word;
  SymbolMarks icon;
  session::Tool tool;
};

SymbolMarks arrow_icon() {
  const Stroke ink{palette::ink, 0.35, {}};
  return {
      LineMark{{{-1.6, -2.6}, {-1.6, 2.4}, {-0.3, 1.2}, {0.8, 3.2}, {1.6, 2.8}, {0.6, 0.8}, {2.2, 0.6}}, ink, true}};
}

SymbolMarks lot_icon() {
  return {
      LineMark{{{-3, -2.2}, {2.6, -2.8}, {3.2, 2.4}, {-3.4, 2.8}}, {palette::ink, 0.35, {1.4, 0.6, 0.3, 0.6}}, true}};
}

SymbolMarks measure_icon() {
  const Stroke ink{palette::ink, 0.35, {}};
  return {LineMark{{{-3.4, 0}, {3.4, 0}}, ink, false}, LineMark{{{-3.4, -1.4}, {-3.4, 1.4}}, ink, false},
          LineMark{{{3.4, -1.4}, {3.4, 1.4}}, ink, false}};
}

std::vector<Entry> entries() {
  std::vector<Entry> list{{"select", arrow_icon(), {}}, {"lot", lot_icon(), session::lot_tool()}};
  for (const Thing& thing : every_kind()) {
    if (std::holds_alternative<Dimension>(thing)) continue;  // measuring leaves one
    list.push_back({std::string{kind_label(thing)}, symbol_of_kind(kind_key(thing)), session::tool_for(thing)});
  }
  list.push_back({"measure", measure_icon(), session::measure_tool()});
  return list;
}

bool in_hand(const session::Tool& tool, const Entry& entry) {
  const bool same_kind = tool.thing.has_value() == entry.tool.thing.has_value() &&
                         (!tool.thing || tool.thing->index() == entry.tool.thing->index());
  return tool.doing == entry.tool.doing && same_kind;
}

/// Centred; broken at a blank where it is too wide.
void word_below(ImDrawList& list, ImVec2 middle, const std::string& word, float room, const Workspace& work,
                Colour colour) {
  ImFont* font = work.look.letters.small;
  const float size = work.look.px(10.5);
  const auto line = [&](const std::string& text, float down) {
    const ImVec2 extent = font->CalcTextSizeA(size, 1e6F, 0, text.c_str());
    list.AddText(font, size, {std::round(middle.x - extent.x / 2), std::round(middle.y + down)}, look::packed(colour),
                 text.c_str());
  };
  const std::size_t blank = word.find(' ');
  if (font->CalcTextSizeA(size, 1e6F, 0, word.c_str()).x <= room || blank == std::string::npos) return line(word, 0);
  line(word.substr(0, blank), -size * 0.25F);
  line(word.substr(blank + 1), size * 0.75F);
}

std::string what_it_does(const Entry& entry, bool is_picture) {
  if (is_picture) return "Lay a picture of the yard under the plan, to trace from.";
  return entry.tool.doing == session::Doing::select ? "Pick, move and change what is on the plan."
                                                    : instruction(entry.tool);
}

void show_entry(const Workspace& work, const Entry& entry, ImVec2 at, ImVec2 size) {
  ImGui::SetCursorScreenPos(at);
  const bool is_picture = entry.tool.thing && std::holds_alternative<Picture>(*entry.tool.thing);
  if (ImGui::InvisibleButton(entry.word.c_str(), size)) {
    if (is_picture)
      work.state.wish = FileWish::picture;
    else
      session::take_tool(work.session, entry.tool);
  }
  hint(what_it_does(entry, is_picture));
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const bool held = in_hand(work.session.tool, entry);
  const ImVec2 low{at.x + work.look.px(2), at.y + work.look.px(1)},
      high{at.x + size.x - work.look.px(2), at.y + size.y - work.look.px(1)};
  if (held) {
    list.AddRectFilled(low, high, look::packed(palette::white), work.look.px(8));
    list.AddRect(low, high, look::packed(palette::ink), work.look.px(8), 0, work.look.px(1.3));
  } else if (ImGui::IsItemHovered()) {
    list.AddRectFilled(low, high, look::packed(palette::rule_line.faded(0.6)), work.look.px(8));
  }
  const float middle = at.x + size.x / 2;
  symbol(list, {middle, at.y + size.y * 0.36F}, entry.icon, 0.74, work.look);
  word_below(list, {middle, at.y + size.y * 0.68F}, entry.word, size.x - work.look.px(4), work,
             held ? palette::ink : palette::quiet_ink);
}

}  // namespace

void show_tray(const Workspace& work, const canvas::Rect& place) {
  const std::vector<Entry> all = entries();
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0});
  begin_panel("tray", place);
  ImGui::PopStyleVar();
  const float margin = work.look.px(5), rows = static_cast<float>((all.size() + 1) / 2);
  const ImVec2 size{(place.high.x - place.low.x - 2 * margin) / 2,
                    std::min(work.look.px(60), (place.high.y - place.low.y - 2 * margin) / rows)};
  for (std::size_t i = 0; i < all.size(); ++i) {
    const ImVec2 at{place.low.x + margin + size.x * static_cast<float>(i % 2),
                    place.low.y + margin + size.y * static_cast<float>(i / 2)};
    show_entry(work, all[i], at, size);
  }
  ImGui::End();
}

}  // namespace yardwright::panels
