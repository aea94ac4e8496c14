#include "editor/canvas/look.hpp"

#include <fontconfig/fontconfig.h>
#include <imgui_freetype.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <memory>
#include <string>

namespace yardwright::look {

namespace {

/// The file of an Inter of a weight; empty where fontconfig would hand out another family.
std::string inter_file(int weight) {
  const std::unique_ptr<FcConfig, decltype(&FcConfigDestroy)> config{FcInitLoadConfigAndFonts(), FcConfigDestroy};
  const std::unique_ptr<FcPattern, decltype(&FcPatternDestroy)> wanted{
      FcPatternBuild(nullptr, FC_FAMILY, FcTypeString, "Inter", FC_WEIGHT, FcTypeInteger, weight, FC_SLANT,
                     FcTypeInteger, FC_SLANT_ROMAN, nullptr),
      FcPatternDestroy};
  if (!config || !wanted) return "";
  FcConfigSubstitute(config.get(), wanted.get(), FcMatchPattern);
  FcDefaultSubstitute(wanted.get());
  FcResult result = FcResultNoMatch;
  const std::unique_ptr<FcPattern, decltype(&FcPatternDestroy)> match{FcFontMatch(config.get(), wanted.get(), &result),
                                                                      FcPatternDestroy};
  FcChar8 *family = nullptr, *file = nullptr;
  if (!match || FcPatternGetString(match.get(), FC_FAMILY, 0, &family) != FcResultMatch) return "";
  if (FcPatternGetString(match.get(), FC_FILE, 0, &file) != FcResultMatch) return "";
  const std::string found{reinterpret_cast<const char*>(family)};
  return found == "Inter" ? std::string{reinterpret_cast<const char*>(file)} : "";
}

/// Latin, typographic marks, arrows and signs.
const ImWchar* glyphs() {
  static const ImWchar ranges[] = {0x20, 0x17f, 0x2010, 0x2044, 0x2190, 0x21ff, 0x2200, 0x22ff, 0x2500, 0x27bf, 0};
  return ranges;
}

ImFont* add_font(const std::string& file, float size_px) {
  ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
  if (!file.empty()) {
    if (ImFont* font = atlas.AddFontFromFileTTF(file.c_str(), size_px, nullptr, glyphs())) return font;
  }
  ImFontConfig own;
  own.SizePixels = size_px;
  return atlas.AddFontDefault(&own);
}

}  // namespace

ImU32 packed(Colour colour) { return IM_COL32(colour.red, colour.green, colour.blue, colour.alpha); }
ImVec4 unpacked(Colour colour) { return ImGui::ColorConvertU32ToFloat4(packed(colour)); }

Letters load_letters(float scale) {
  ImGui::GetIO().Fonts->FontBuilderIO = ImGuiFreeType::GetBuilderForFreeType();
  ImGui::GetIO().Fonts->FontBuilderFlags = ImGuiFreeTypeBuilderFlags_LightHinting;
  const std::string regular = inter_file(FC_WEIGHT_REGULAR), semibold = inter_file(FC_WEIGHT_SEMIBOLD),
                    bold = inter_file(FC_WEIGHT_BOLD);
  Letters letters;
  letters.plain = add_font(regular, std::round(14 * scale));
  letters.small = add_font(regular, std::round(12 * scale));
  letters.strong = add_font(semibold, std::round(14 * scale));
  letters.title = add_font(bold, std::round(19 * scale));
  letters.is_inter = !regular.empty();
  return letters;
}

void set_style(float scale) {
  ImGuiStyle& style = ImGui::GetStyle();
  ImGui::StyleColorsLight(&style);
  style.WindowRounding = style.ChildRounding = 0;
  style.FrameRounding = 7 * scale;
  style.PopupRounding = 9 * scale;
  style.WindowBorderSize = 0;
  style.FrameBorderSize = 1;
  style.PopupBorderSize = 1;
  style.WindowPadding = {16 * scale, 12 * scale};
  style.FramePadding = {9 * scale, 4 * scale};
  style.ItemSpacing = {8 * scale, 6 * scale};
  style.ScrollbarSize = 8 * scale;
  style.ScrollbarRounding = 4 * scale;
  const auto set = [&](ImGuiCol which, Colour colour) { style.Colors[which] = unpacked(colour); };
  set(ImGuiCol_Text, palette::ink);
  set(ImGuiCol_TextDisabled, palette::quiet_ink);
  set(ImGuiCol_WindowBg, palette::card);
  set(ImGuiCol_PopupBg, palette::white);
  set(ImGuiCol_Border, palette::rule_line);
  set(ImGuiCol_FrameBg, palette::white);
  set(ImGuiCol_FrameBgHovered, palette::paper);
  set(ImGuiCol_FrameBgActive, palette::paper);
  set(ImGuiCol_Button, palette::paper);
  set(ImGuiCol_ButtonHovered, palette::rule_line.faded(0.7));
  set(ImGuiCol_ButtonActive, palette::rule_line);
  set(ImGuiCol_Header, palette::paper);
  set(ImGuiCol_HeaderHovered, palette::paper);
  set(ImGuiCol_HeaderActive, palette::rule_line);
  set(ImGuiCol_ScrollbarBg, palette::none);
  set(ImGuiCol_ScrollbarGrab, palette::rule_line);
  set(ImGuiCol_ScrollbarGrabHovered, palette::faint_ink);
  set(ImGuiCol_ScrollbarGrabActive, palette::faint_ink);
  set(ImGuiCol_TextSelectedBg, palette::reach.faded(0.25));
  set(ImGuiCol_ModalWindowDimBg, palette::ink.faded(0.25));
  set(ImGuiCol_CheckMark, palette::ink);
  set(ImGuiCol_NavHighlight, palette::reach);
}

float scale_for(unsigned width_px, unsigned height_px) {
  if (const char* asked = std::getenv("YARDWRIGHT_UI_SCALE")) {
    const float typed = std::strtof(asked, nullptr);
    if (typed >= 0.5F && typed <= 4) return typed;
  }
  const float fits = std::min(static_cast<float>(width_px) / 1600.0F, static_cast<float>(height_px) / 900.0F);
  return std::clamp(std::floor(fits * 4) / 4, 1.0F, 2.5F);
}

}  // namespace yardwright::look
