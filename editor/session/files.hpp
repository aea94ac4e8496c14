// Opening and saving yards for the window: the file itself, the list of recent files, and the autosave, which lies in
// the person's state folder, survives a kill, and comes back as one step that can be undone.
#pragma once

#include "editor/session/session.hpp"
#include "geom/units/problem.hpp"

namespace yardwright::session {

/// $XDG_STATE_HOME/yardwright, or ~/.local/state/yardwright.
std::filesystem::path state_folder();

/// A session on the file; what an autosave of it still holds is put on top as a step, and the notice says so.
Expected<Session> open_yard(const std::filesystem::path& file, const std::filesystem::path& state);
/// A session on a new site, with the same care for an autosave without a file.
Session new_yard(Site site, const std::filesystem::path& state);

/// Saves, and takes the file as the session's own; its autosave goes.
tl::expected<void, Problems> save_yard(Session& session, const std::filesystem::path& file,
                                       const std::filesystem::path& state);

/// Writes the autosave where there is something unsaved.
tl::expected<void, Problems> autosave(const Session& session, const std::filesystem::path& state);
/// What was unsaved is not wanted any more.
void forget_autosave(const Session& session, const std::filesystem::path& state);

/// The last first; files that are gone are left out.
std::vector<std::filesystem::path> recent_files(const std::filesystem::path& state);
void remember_recent(const std::filesystem::path& file, const std::filesystem::path& state);

/// The name with ".yard" where it has no ending.
std::filesystem::path as_yard_file(std::filesystem::path name);

}  // namespace yardwright::session
