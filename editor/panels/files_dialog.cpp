#include "editor/panels/files_dialog.hpp"

#include <algorithm>

#include "editor/panels/dialog_parts.hpp"
#include "editor/panels/import_dialog.hpp"
#include "editor/panels/widgets.hpp"
#include "editor/session/files.hpp"
#include "editor/session/plan_set.hpp"
#include "geom/units/text.hpp"

namespace yardwright::panels {

namespace {

namespace fs = std::filesystem;

/// The window goes on with another yard and keeps what is being asked.
void go_on_with(const Workspace& work, session::Session next) {
  next.question = work.session.question;
  next.history.follow(work.session.history);
  work.session = std::move(next);
}

void save_to(const Workspace& work, FilesDialog& dialog, const fs::path& file) {
  const auto saved = session::save_yard(work.session, file, session::state_folder());
  if (!saved) {
    dialog.problem = told(saved.error());
    return;
  }
  work.session.notice = "Saved in " + file.filename().string() + ".";
  dialog.asking = Asking::nothing;
  work.state.wish = dialog.then;
  dialog.then = FileWish::nothing;
}

void open_from(const Workspace& work, FilesDialog& dialog, const fs::path& file) {
  auto opened = session::open_yard(file, session::state_folder());
  if (!opened) {
    dialog.problem = told(opened.error());
    return;
  }
  go_on_with(work, std::move(*opened));
  dialog.asking = Asking::nothing;
}

void begin(const Workspace& work, FilesDialog& dialog, Asking asking) {
  dialog.asking = asking;
  dialog.problem.clear();
  dialog.replaced.clear();
  if (dialog.folder.empty()) {
    std::error_code none;
    dialog.folder = work.session.file ? fs::absolute(*work.session.file).parent_path() : fs::current_path(none);
  }
  if (asking == Asking::save_as)
    dialog.name = work.session.file ? work.session.file->filename().string() : title_of(work.session) + ".yard";
  else
    dialog.name.clear();
}

bool loses_work(FileWish wish) {
  return wish == FileWish::new_yard || wish == FileWish::open || wish == FileWish::quit;
}

void make_plan_set(const Workspace& work, FilesDialog& dialog) {
  if (!work.session.file) {
    begin(work, dialog, Asking::save_as);
    dialog.then = FileWish::plan_set;
    dialog.problem = "The plan set is written beside the yard: save the yard first.";
    return;
  }
  const auto done = session::write_plan_set(work.session, work.catalogs, work.storms.record());
  if (!done) work.session.notice = told(done.error());
}

void grant(const Workspace& work, FilesDialog& dialog, FileWish wish) {
  switch (wish) {
    case FileWish::new_yard: return begin(work, dialog, Asking::new_lot);
    case FileWish::open:
      if (work.state.wished_file.empty()) return begin(work, dialog, Asking::open);
      begin(work, dialog, Asking::open);
      return open_from(work, dialog, std::exchange(work.state.wished_file, {}));
    case FileWish::save:
      if (!work.session.file) return begin(work, dialog, Asking::save_as);
      return save_to(work, dialog, *work.session.file);
    case FileWish::save_as: return begin(work, dialog, Asking::save_as);
    case FileWish::picture:
      if (work.session.file) return begin(work, dialog, Asking::picture);
      begin(work, dialog, Asking::save_as);
      dialog.then = FileWish::picture;
      dialog.problem = "A picture is kept beside the yard: save the yard first.";
      return;
    case FileWish::ground: return begin(work, dialog, Asking::ground);
    case FileWish::rain: return begin(work, dialog, Asking::rain);
    case FileWish::plan_set: return make_plan_set(work, dialog);
    case FileWish::quit: dialog.ends = true; return;
    case FileWish::nothing: return;
  }
}

void take_wish(const Workspace& work, FilesDialog& dialog) {
  const FileWish wish = std::exchange(work.state.wish, FileWish::nothing);
  if (!loses_work(wish) || !work.session.is_changed()) return grant(work, dialog, wish);
  dialog.then = wish;
  begin(work, dialog, Asking::unsaved);
}

void ask_unsaved(const Workspace& work, FilesDialog& dialog) {
  words("Save " + title_of(work.session) + " first?", work.look.letters.title, palette::ink);
  words("It has changes that are not in a file yet.", work.look.letters.plain, palette::quiet_ink);
  ImGui::Dummy({0, work.look.px(6)});
  if (pill("save", work.look, true)) grant(work, dialog, FileWish::save);
  ImGui::SameLine();
  if (pill("leave the changes", work.look)) {
    session::forget_autosave(work.session, session::state_folder());
    dialog.asking = Asking::nothing;
    grant(work, dialog, std::exchange(dialog.then, FileWish::nothing));
  }
  ImGui::SameLine();
  if (pill("go back", work.look) || escape_pressed()) {
    dialog.asking = Asking::nothing;
    dialog.then = FileWish::nothing;
  }
}

void begin_yard(const Workspace& work, FilesDialog& dialog) {
  const auto length_m = parse_quantity(dialog.length, Quantity::length, work.units());
  const auto width_m = parse_quantity(dialog.width, Quantity::length, work.units());
  if (!length_m || !width_m || *length_m <= 0 || *width_m <= 0 || *length_m > 1e5 || *width_m > 1e5) {
    dialog.problem = "The lot's sizes are not understood; type them as 600 ft or 180 m.";
    return;
  }
  Site site;
  site.units = work.units();
  site.lot = rectangular_lot(*length_m, *width_m);
  go_on_with(work, session::session_of(std::move(site)));
  dialog.asking = Asking::nothing;
}

void ask_new_lot(const Workspace& work, FilesDialog& dialog) {
  words("A new yard", work.look.letters.title, palette::ink);
  words("How large is the lot? It can be drawn anew with the lot tool.", work.look.letters.plain, palette::quiet_ink);
  ImGui::Dummy({0, work.look.px(4)});
  labelled_text(work.look, "length, west to east", dialog.length, ImGui::IsWindowAppearing());
  labelled_text(work.look, "width, south to north", dialog.width, false);
  show_problem(work.look, dialog.problem);
  ImGui::Dummy({0, work.look.px(6)});
  if (pill("begin", work.look, true) || enter_pressed()) begin_yard(work, dialog);
  ImGui::SameLine();
  if (pill("go back", work.look) || escape_pressed()) dialog.asking = Asking::nothing;
}

/// Another yard is replaced only when it is asked for twice.
bool may_write(const Workspace& work, FilesDialog& dialog, const fs::path& file) {
  std::error_code none;
  const bool is_own = work.session.file && fs::equivalent(*work.session.file, file, none);
  if (is_own || !fs::exists(file, none) || dialog.replaced == file) return true;
  dialog.replaced = file;
  dialog.problem = file.filename().string() + " is there already. Save once more to replace it, or give another name.";
  return false;
}

bool is_yard_name(const fs::path& file) { return file.extension() == ".yard"; }

void ask_file(const Workspace& work, FilesDialog& dialog) {
  const bool saves = dialog.asking == Asking::save_as;
  words(saves ? "Save the yard as" : "Open a yard", work.look.letters.title, palette::ink);
  const auto clicked = folder_list(work.look, dialog.folder, dialog.name, is_yard_name);
  labelled_text(work.look, "name", dialog.name, ImGui::IsWindowAppearing());
  show_problem(work.look, dialog.problem);
  ImGui::Dummy({0, work.look.px(4)});
  const bool done = pill(saves ? "save here" : "open", work.look, true) || enter_pressed() || clicked == Clicked::twice;
  ImGui::SameLine();
  if (pill("go back", work.look) || escape_pressed()) {
    dialog.asking = Asking::nothing;
    dialog.then = FileWish::nothing;
    return;
  }
  if (!done || dialog.name.empty()) return;
  const fs::path file = session::as_yard_file(dialog.folder / dialog.name);
  if (!saves) return open_from(work, dialog, file);
  if (may_write(work, dialog, file)) save_to(work, dialog, file);
}

}  // namespace

std::string told(const Problems& problems) {
  std::string text;
  for (const Problem& problem : problems) text += (text.empty() ? "" : "\n") + sentence(problem);
  return text;
}

void do_files(const Workspace& work, FilesDialog& dialog) {
  if (work.state.wish != FileWish::nothing) take_wish(work, dialog);
  if (dialog.asking == Asking::nothing) return;
  begin_dialog(work.look);
  if (dialog.asking == Asking::unsaved)
    ask_unsaved(work, dialog);
  else if (dialog.asking == Asking::new_lot)
    ask_new_lot(work, dialog);
  else if (dialog.asking == Asking::picture)
    ask_picture(work, dialog);
  else if (dialog.asking == Asking::ground)
    ask_ground(work, dialog);
  else if (dialog.asking == Asking::rain)
    ask_rain(work, dialog);
  else
    ask_file(work, dialog);
  end_dialog(dialog.asking == Asking::nothing);
}

}  // namespace yardwright::panels
