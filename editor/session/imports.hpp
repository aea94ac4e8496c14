// What the window's import dialogs ask for, and doing it: the text of their fields to the options of the core, and one
// undoable step where it went well.
#pragma once

#include <filesystem>

#include "editor/session/session.hpp"
#include "geom/units/problem.hpp"

namespace yardwright::session {

/// A picture is laid under the plan and chosen; where it does not place itself the fit tool is taken. Needs a saved yard.
tl::expected<void, Problems> lay_picture(Session& session, const std::filesystem::path& file);

/// As it is typed.
struct GroundWords {
  std::string cell = "1 m", margin = "100 m", epsg;
  std::string level_unit = "as the file says";  ///< or m, ft, us-ft
  std::string plan_unit = "as the file says";
  bool fills_holes = false;
  bool operator==(const GroundWords&) const = default;
};

/// The yard's ground becomes the file's levels; what was read and assumed stands in the notice.
tl::expected<void, Problems> bring_in_ground(Session& session, const std::filesystem::path& file,
                                             const GroundWords& words);

/// Whether the name ends as a file of levels does.
bool is_ground_name(const std::filesystem::path& file);

}  // namespace yardwright::session
