#include "editor/panels/file_menu.hpp"

#include "editor/panels/widgets.hpp"
#include "editor/session/files.hpp"

namespace yardwright::panels {

namespace {

void entry(const Workspace& work, const char* name, const char* keys, FileWish wish) {
  if (ImGui::MenuItem(name, keys)) work.state.wish = wish;
}

void recent_entries(const Workspace& work) {
  const auto files = session::recent_files(session::state_folder());
  if (files.empty()) return;
  ImGui::Separator();
  for (const auto& file : files) {
    if (ImGui::MenuItem((file.stem().string() + "##" + file.string()).c_str())) {
      work.state.wished_file = file;
      work.state.wish = FileWish::open;
    }
    hint(file.string());
  }
}

}  // namespace

void show_file_menu(const Workspace& work) {
  const bool changed = work.session.is_changed();
  if (pill(changed ? "file · not saved" : "file", work.look)) ImGui::OpenPopup("file menu");
  ImGui::SetNextWindowPos({ImGui::GetItemRectMin().x, ImGui::GetItemRectMax().y + work.look.px(4)});
  if (!ImGui::BeginPopup("file menu")) return;
  close_on_escape();
  entry(work, "New yard", "Ctrl+N", FileWish::new_yard);
  entry(work, "Open ...", "Ctrl+O", FileWish::open);
  entry(work, "Save", "Ctrl+S", FileWish::save);
  entry(work, "Save as ...", "Ctrl+Shift+S", FileWish::save_as);
  ImGui::Separator();
  entry(work, "Lay a picture under ...", nullptr, FileWish::picture);
  entry(work, "Bring in levels ...", nullptr, FileWish::ground);
  entry(work, "Bring in a rain table ...", nullptr, FileWish::rain);
  ImGui::Separator();
  entry(work, "Write the plan set", nullptr, FileWish::plan_set);
  hint("A PDF beside the yard: the plan to scale, a plan of each question, schedules, findings and cautions.");
  recent_entries(work);
  ImGui::EndPopup();
}

}  // namespace yardwright::panels
