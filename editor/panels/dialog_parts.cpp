#include "editor/panels/dialog_parts.hpp"

#include <imgui_stdlib.h>

#include <algorithm>
#include <vector>

#include "editor/panels/widgets.hpp"

namespace yardwright::panels {

namespace {

namespace fs = std::filesystem;

constexpr const char* dialog_name = "dialog";

struct Entries {
  std::vector<std::string> folders, files;
};

/// What cannot be read is left out: a folder without permission is an empty one here.
Entries entries_of(const fs::path& folder, bool (*shows)(const fs::path&)) {
  Entries entries;
  std::error_code failed;
  for (fs::directory_iterator at{folder, fs::directory_options::skip_permission_denied, failed}, end;
       !failed && at != end; at.increment(failed)) {
    const std::string name = at->path().filename().string();
    std::error_code none;
    if (name.starts_with('.')) continue;
    if (at->is_directory(none))
      entries.folders.push_back(name);
    else if (shows(at->path()))
      entries.files.push_back(name);
  }
  std::ranges::sort(entries.folders);
  std::ranges::sort(entries.files);
  return entries;
}

bool row(const std::string& name, bool chosen = false) {
  return ImGui::Selectable(name.c_str(), chosen, ImGuiSelectableFlags_AllowDoubleClick);
}

}  // namespace

void begin_dialog(const look::Look& look) {
  if (!ImGui::IsPopupOpen(dialog_name)) ImGui::OpenPopup(dialog_name);
  const ImVec2 window = ImGui::GetIO().DisplaySize;
  ImGui::SetNextWindowPos({window.x / 2, window.y * 0.42F}, ImGuiCond_Always, {0.5F, 0.5F});
  ImGui::SetNextWindowSize({look.px(460), 0});
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {look.px(22), look.px(18)});
  ImGui::BeginPopupModal(dialog_name, nullptr,
                         ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoResize |
                             ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_AlwaysAutoResize);
  ImGui::PopStyleVar();
}

void end_dialog(bool is_done) {
  if (is_done) ImGui::CloseCurrentPopup();
  ImGui::EndPopup();
}

void labelled_text(const look::Look& look, const char* label, std::string& text, bool takes_focus) {
  ImGui::AlignTextToFramePadding();
  words(label, look.letters.small, palette::quiet_ink);
  ImGui::SameLine(look.px(170));
  if (takes_focus) ImGui::SetKeyboardFocusHere();
  ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x);
  ImGui::PushID(label);
  ImGui::InputText("##text", &text, ImGuiInputTextFlags_AutoSelectAll);
  ImGui::PopID();
}

void show_problem(const look::Look& look, const std::string& problem) {
  if (!problem.empty()) words(problem, look.letters.small, palette::fail, true);
}

bool enter_pressed() { return ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Enter), false); }
bool escape_pressed() { return ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape), false); }

Clicked folder_list(const look::Look& look, fs::path& folder, std::string& name, bool (*shows)(const fs::path&)) {
  words(folder.string(), look.letters.small, palette::quiet_ink, true);
  Clicked clicked = Clicked::nothing;
  ImGui::PushStyleColor(ImGuiCol_ChildBg, look::unpacked(palette::white));
  ImGui::BeginChild("files", {0, look.px(240)}, true);
  const Entries entries = entries_of(folder, shows);
  if (folder.has_parent_path() && row("↑  the folder above")) folder = folder.parent_path();
  for (const std::string& one : entries.folders) {
    if (row(one + " /")) folder /= one;
  }
  for (const std::string& one : entries.files) {
    if (!row(one, one == name)) continue;
    name = one;
    clicked = ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left) ? Clicked::twice : Clicked::once;
  }
  ImGui::EndChild();
  ImGui::PopStyleColor();
  return clicked;
}

}  // namespace yardwright::panels
