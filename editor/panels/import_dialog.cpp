#include "editor/panels/import_dialog.hpp"

#include "editor/panels/dialog_parts.hpp"
#include "editor/panels/widgets.hpp"
#include "geom/io/picture_file.hpp"

namespace yardwright::panels {

namespace {

namespace fs = std::filesystem;

/// Buttons at a dialog's foot: whether it is to be done now.
bool ask_to_do(const Workspace& work, FilesDialog& dialog, const char* word, Clicked clicked) {
  show_problem(work.look, dialog.problem);
  ImGui::Dummy({0, work.look.px(4)});
  const bool done = pill(word, work.look, true) || enter_pressed() || clicked == Clicked::twice;
  ImGui::SameLine();
  if (pill("go back", work.look) || escape_pressed()) {
    dialog.asking = Asking::nothing;
    return false;
  }
  if (done && dialog.name.empty()) dialog.problem = "Choose a file of the list first.";
  return done && !dialog.name.empty();
}

void begin_reading(FilesDialog& dialog, const Expected<session::Reading>& reading) {
  dialog.problem = reading ? "" : told(reading.error());
  if (reading) dialog.reading.read(dialog.name, *reading);
}

/// While a file is read: its name, and a way back.
void show_reading(const Workspace& work, FilesDialog& dialog) {
  words("Reading " + dialog.reading.name() + " ...", work.look.letters.small, palette::ink, true);
  ImGui::Dummy({0, work.look.px(4)});
  if (pill("stop reading", work.look) || escape_pressed()) dialog.reading.cancel();
  const auto read = dialog.reading.take();
  if (!read) return;
  if (!*read) {
    dialog.problem = told(read->error());
    return;
  }
  (**read)(work.session);
  dialog.asking = Asking::nothing;
}

void choice_row(const Workspace& work, const char* label, std::string& now, const std::vector<std::string>& choices) {
  std::vector<session::Choice> list;
  for (const std::string& choice : choices) list.push_back({choice, choice});
  ImGui::AlignTextToFramePadding();
  words(label, work.look.letters.small, palette::quiet_ink);
  ImGui::SameLine(work.look.px(170));
  ImGui::PushID(label);
  if (const auto chosen = choice_field("##choice", list, now, ImGui::GetContentRegionAvail().x)) now = *chosen;
  ImGui::PopID();
}

void ground_options(const Workspace& work, session::GroundWords& asked) {
  const std::vector<std::string> units{"as the file says", "m", "ft", "us-ft"};
  labelled_text(work.look, "size of a cell", asked.cell, false);
  labelled_text(work.look, "margin around the lot", asked.margin, false);
  choice_row(work, "levels are in", asked.level_unit, units);
  choice_row(work, "east and north are in", asked.plan_unit, units);
  labelled_text(work.look, "EPSG, if it has none", asked.epsg, false);
  std::string fills = asked.fills_holes ? "fill from around them" : "refuse";
  choice_row(work, "cells without level", fills, {"refuse", "fill from around them"});
  asked.fills_holes = fills != "refuse";
}

}  // namespace

void ask_picture(const Workspace& work, FilesDialog& dialog) {
  words("Lay a picture under the plan", work.look.letters.title, palette::ink);
  words("PNG, JPEG or GeoTIFF. It is copied beside the yard, and then fitted by two points.", work.look.letters.small,
        palette::quiet_ink, true);
  const Clicked clicked = folder_list(work.look, dialog.folder, dialog.name, is_picture_name);
  if (dialog.reading.is_reading()) return show_reading(work, dialog);
  if (ask_to_do(work, dialog, "lay it under", clicked))
    begin_reading(dialog, session::picture_reading(work.session, dialog.folder / dialog.name));
}

void ask_ground(const Workspace& work, FilesDialog& dialog) {
  words("Bring in levels", work.look.letters.title, palette::ink);
  words("GeoTIFF, ESRI ASCII grid, or a list of x, y, level.", work.look.letters.small, palette::quiet_ink, true);
  const Clicked clicked = folder_list(work.look, dialog.folder, dialog.name, session::is_ground_name);
  ground_options(work, dialog.ground);
  if (dialog.reading.is_reading()) return show_reading(work, dialog);
  if (ask_to_do(work, dialog, "bring it in", clicked))
    begin_reading(dialog, session::ground_reading(work.session, dialog.folder / dialog.name, dialog.ground));
}

void ask_rain(const Workspace& work, FilesDialog& dialog) {
  words("Bring in a rain table", work.look.letters.title, palette::ink);
  words("The text export of a point of NOAA Atlas 14: depths, partial duration series. Its 24-hour row is read.",
        work.look.letters.small, palette::quiet_ink, true);
  const Clicked clicked = folder_list(work.look, dialog.folder, dialog.name, session::is_rain_name);
  labelled_text(work.look, "file", dialog.name, ImGui::IsWindowAppearing());
  if (dialog.reading.is_reading()) return show_reading(work, dialog);
  if (ask_to_do(work, dialog, "bring it in", clicked))
    begin_reading(dialog, session::rain_reading(work.session, dialog.folder / dialog.name));
}

}  // namespace yardwright::panels
