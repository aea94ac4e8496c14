// What stands before the window for a moment: choosing a file to open or to save as, a new yard's lot, and the
// question about unsaved work.
#pragma once

#include <filesystem>

#include "editor/panels/workspace.hpp"
#include "editor/session/imports.hpp"

namespace yardwright::panels {

enum class Asking : std::uint8_t { nothing, unsaved, new_lot, open, save_as, picture, ground, rain };

struct FilesDialog {
  Asking asking = Asking::nothing;
  FileWish then = FileWish::nothing;  ///< what was wished before the question about unsaved work came between
  std::filesystem::path folder;
  std::string name;  ///< typed or clicked
  std::string length = "600 ft", width = "500 ft";
  session::GroundWords ground;
  session::ReadingDesk reading;
  std::string problem;
  std::filesystem::path replaced;  ///< a file that is there already, once it was said
  bool ends = false;               ///< the program may end
};

/// Problems as sentences, one a line.
std::string told(const Problems& problems);

/// Takes up a wish of the menu or the keyboard, and shows what it needs to ask.
void do_files(const Workspace& work, FilesDialog& dialog);

}  // namespace yardwright::panels
