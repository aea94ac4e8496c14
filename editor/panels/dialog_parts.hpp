// What dialogs are made of: a sheet of paper over the dimmed window, labelled texts, the files of a folder.
#pragma once

#include <filesystem>
#include <string>

#include "editor/canvas/look.hpp"

namespace yardwright::panels {

void begin_dialog(const look::Look& look);
void end_dialog(bool is_done);

void labelled_text(const look::Look& look, const char* label, std::string& text, bool takes_focus);
void show_problem(const look::Look& look, const std::string& problem);
bool enter_pressed();
bool escape_pressed();

enum class Clicked : std::uint8_t { nothing, once, twice };
/// The folders of a folder and the files that `shows` says; a click on a folder goes into it, one on a file takes its name.
Clicked folder_list(const look::Look& look, std::filesystem::path& folder, std::string& name,
                    bool (*shows)(const std::filesystem::path&));

}  // namespace yardwright::panels
