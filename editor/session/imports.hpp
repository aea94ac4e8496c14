// What the window's import dialogs ask for, as a reading for the desk: the text of their fields to the options of the
// core, and one undoable step where it went well.
#pragma once

#include <filesystem>

#include "editor/session/reading_desk.hpp"
#include "editor/session/session.hpp"
#include "geom/units/problem.hpp"

namespace yardwright::session {

/// A picture is laid under the plan and chosen; where it does not place itself the fit tool is taken. Needs a saved yard.
/// Its copy beside the yard goes again where the yard is left unsaved.
Expected<Reading> picture_reading(const Session& session, const std::filesystem::path& file);

/// As it is typed.
struct GroundWords {
  std::string cell = "1 m", margin = "100 m", epsg;
  std::string level_unit = "as the file says";  ///< or m, ft, us-ft
  std::string plan_unit = "as the file says";
  bool fills_holes = false;
  bool operator==(const GroundWords&) const = default;
};

/// The yard's ground becomes the file's levels; what was read and assumed stands in the notice.
Expected<Reading> ground_reading(const Session& session, const std::filesystem::path& file, const GroundWords& words);

/// The yard's rain table becomes that of a NOAA Atlas 14 text export, and its design storm the table's rain of its years.
Expected<Reading> rain_reading(const Session& session, const std::filesystem::path& file);

/// Reads and takes in at once, for whoever has no frames to draw.
tl::expected<void, Problems> read_now(Session& session, const Expected<Reading>& reading);

/// Whether the name ends as a file of levels does.
bool is_ground_name(const std::filesystem::path& file);
/// As a table exported as text does.
bool is_rain_name(const std::filesystem::path& file);

}  // namespace yardwright::session
