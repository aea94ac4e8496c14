#include <unistd.h>

#include <filesystem>

#include "editor/cli/verb.hpp"

namespace yardwright::cli {

void open_window(const std::string& file, Console& console) {
  std::error_code error;
  const auto self = std::filesystem::read_symlink("/proc/self/exe", error);
  const std::string editor = (self.parent_path() / "yardwright-editor").string();
  const char* words[] = {editor.c_str(), file.empty() ? nullptr : file.c_str(), nullptr};
  execv(editor.c_str(), const_cast<char* const*>(words));  // comes back only where it could not start
  refuse({{"the window's program could not be started", editor,
           "build yardwright-editor beside yardwright, or name a verb: yardwright --help"}},
         console);
}

}  // namespace yardwright::cli
