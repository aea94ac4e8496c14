#include "editor/panels/widgets.hpp"

#include <imgui_stdlib.h>

#include "editor/canvas/device.hpp"

namespace yardwright::panels {

using look::packed;
using look::unpacked;

void begin_panel(const char* name, const canvas::Rect& place, bool scrolls) {
  ImGui::SetNextWindowPos(place.low);
  ImGui::SetNextWindowSize({place.high.x - place.low.x, place.high.y - place.low.y});
  ImGuiWindowFlags flags = ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoMove |
                           ImGuiWindowFlags_NoCollapse | ImGuiWindowFlags_NoSavedSettings |
                           ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoBackground;
  if (!scrolls) flags |= ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse;
  ImGui::Begin(name, nullptr, flags);
}

void words(const std::string& text, ImFont* font, Colour colour, bool wraps, float right_margin) {
  ImGui::PushFont(font);
  ImGui::PushStyleColor(ImGuiCol_Text, unpacked(colour));
  if (wraps) ImGui::PushTextWrapPos(ImGui::GetContentRegionMax().x - right_margin);
  ImGui::TextUnformatted(text.data(), text.data() + text.size());
  if (wraps) ImGui::PopTextWrapPos();
  ImGui::PopStyleColor();
  ImGui::PopFont();
}

float width_of(const std::string& text, ImFont* font) {
  return font->CalcTextSizeA(font->FontSize, 1e6F, 0, text.data(), text.data() + text.size()).x;
}

void small_words(const Workspace& work, const std::string& text, Colour colour) {
  words(text, work.look.letters.small, colour, true);
}

float words_at(ImDrawList& list, ImVec2 at, const std::string& text, ImFont* font, Colour colour) {
  list.AddText(font, font->FontSize, at, packed(colour), text.data(), text.data() + text.size());
  return width_of(text, font);
}

std::string cut_to(const std::string& text, ImFont* font, float width) {
  if (width_of(text, font) <= width) return text;
  std::string cut = text;
  while (!cut.empty() && width_of(cut + "…", font) > width) {
    const bool inside_letter = (static_cast<unsigned char>(cut.back()) & 0xC0U) == 0x80U;
    cut.pop_back();
    while (inside_letter && !cut.empty() && (static_cast<unsigned char>(cut.back()) & 0x80U) != 0) {
      const bool first_byte = (static_cast<unsigned char>(cut.back()) & 0xC0U) == 0xC0U;
      cut.pop_back();
      if (first_byte) break;
    }
  }
  return cut + "…";
}

float pill_width(const std::string& text, const look::Look& look) {
  return width_of(text, look.letters.small) + look.px(22);
}

bool pill(const std::string& text, const look::Look& look, bool strong) {
  ImGui::PushFont(look.letters.small);
  ImGui::PushStyleVar(ImGuiStyleVar_FrameRounding, look.px(12));
  ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {look.px(11), look.px(4)});
  ImGui::PushStyleColor(ImGuiCol_Button, unpacked(strong ? palette::ink : palette::paper));
  ImGui::PushStyleColor(ImGuiCol_ButtonHovered, unpacked(strong ? palette::quiet_ink : palette::rule_line));
  ImGui::PushStyleColor(ImGuiCol_Text, unpacked(strong ? palette::white : palette::ink));
  const bool pressed = ImGui::Button(text.c_str());
  ImGui::PopStyleColor(3);
  ImGui::PopStyleVar(2);
  ImGui::PopFont();
  return pressed;
}

bool pill_at_right(const std::string& text, const look::Look& look) {
  ImGui::SameLine(ImGui::GetWindowContentRegionMax().x - pill_width(text, look));
  return pill(text, look);
}

void same_line_if_room(float width, const look::Look& look) {
  const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
  if (ImGui::GetItemRectMax().x + look.px(6) + width <= right) ImGui::SameLine(0, look.px(6));
}

void symbol(ImDrawList& list, ImVec2 at, const SymbolMarks& marks, double factor, const look::Look& look) {
  Drawing drawing;
  drawing.y_up = false;
  drawing.marks.push_back(SymbolMark{{0, 0}, scaled(marks, factor)});
  canvas::draw(drawing, {static_cast<double>(at.x), static_cast<double>(at.y), 1, look.px_per_mm()}, look, list);
}

std::optional<std::string> typed_field(Typing& typing, const char* id, const std::string& shown, float width) {
  const ImGuiID key = ImGui::GetID(id);
  std::string untouched = shown;
  std::string& text = typing.field == key ? typing.text : untouched;
  ImGui::SetNextItemWidth(width);
  ImGui::InputText(id, &text, ImGuiInputTextFlags_AutoSelectAll);
  if (ImGui::IsItemActivated()) {
    typing.field = key;
    typing.text = shown;
  }
  if (!ImGui::IsItemDeactivated() || typing.field != key) return std::nullopt;
  typing.field = 0;
  if (!ImGui::IsItemDeactivatedAfterEdit() || typing.text == shown) return std::nullopt;
  return typing.text;
}

namespace {

/// At the right end of the last field: that it opens.
void chevron() {
  const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
  const float size = (high.y - low.y) * 0.12F;
  const ImVec2 at{high.x - size * 4.5F, (low.y + high.y) / 2};
  ImDrawList& list = *ImGui::GetWindowDrawList();
  const float inset = size * 0.8F;
  list.AddRectFilled({high.x - size * 8, low.y + inset}, {high.x - inset, high.y - inset}, packed(palette::white),
                     size * 2);
  const ImVec2 points[] = {
      {at.x - size * 1.4F, at.y - size * 0.7F}, {at.x, at.y + size * 0.7F}, {at.x + size * 1.4F, at.y - size * 0.7F}};
  list.AddPolyline(points, 3, packed(palette::quiet_ink), ImDrawFlags_None, size * 0.45F);
}

}  // namespace

std::optional<std::string> choice_field(const char* id, const std::vector<session::Choice>& choices,
                                        const std::string& now, float width) {
  std::string shown = now;
  for (const session::Choice& choice : choices) {
    if (choice.value == now) shown = choice.words;
  }
  std::optional<std::string> chosen;
  ImGui::SetNextItemWidth(width);
  const bool open = ImGui::BeginCombo(id, shown.c_str(), ImGuiComboFlags_HeightLarge | ImGuiComboFlags_NoArrowButton);
  if (!open) chevron();
  if (!open) return chosen;
  close_on_escape();
  for (const session::Choice& choice : choices) {
    if (ImGui::Selectable((choice.words + "##" + choice.value).c_str(), choice.value == now)) chosen = choice.value;
  }
  ImGui::EndCombo();
  return chosen;
}

void close_on_escape() {
  if (ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape), false)) ImGui::CloseCurrentPopup();
}

void hint(const std::string& text) {
  if (!ImGui::IsItemHovered() || text.empty()) return;
  ImGui::BeginTooltip();
  ImGui::PushTextWrapPos(ImGui::GetFontSize() * 22);
  ImGui::TextUnformatted(text.data(), text.data() + text.size());
  ImGui::PopTextWrapPos();
  ImGui::EndTooltip();
}

}  // namespace yardwright::panels
