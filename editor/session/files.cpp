#include "editor/session/files.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>

#include "editor/session/pictures.hpp"
#include "geom/io/site_file.hpp"

namespace yardwright::session {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_recent = 8;

/// One autosave a file: its name for people, a number of its whole path against mix-ups.
fs::path autosave_of(const std::optional<fs::path>& file, const fs::path& state) {
  if (!file) return state / "autosave" / "untitled.yard";
  std::uint64_t number = 1469598103934665603ULL;
  for (const char c : fs::absolute(*file).lexically_normal().string()) {
    number = (number ^ static_cast<unsigned char>(c)) * 1099511628211ULL;
  }
  return state / "autosave" / fmt::format("{}-{:016x}.yard", file->stem().string(), number);
}

void bring_back_autosave(Session& session, const fs::path& state) {
  const fs::path kept = autosave_of(session.file, state);
  std::error_code none;
  if (!fs::exists(kept, none)) return;
  auto site = load_site(kept);
  if (!site || *site == session.site()) return;
  session.history.add_step(std::move(*site));
  session.look_at = bounds_of(session.site());
  session.notice = "What was not saved the last time is back; Ctrl+Z takes it away.";
}

fs::path recent_list(const fs::path& state) { return state / "recent"; }

std::vector<fs::path> listed(const fs::path& state) {
  std::vector<fs::path> files;
  std::ifstream list{recent_list(state)};
  for (std::string line; files.size() < most_recent && std::getline(list, line);) {
    if (!line.empty()) files.emplace_back(line);
  }
  return files;
}

}  // namespace

fs::path state_folder() {
  if (const char* asked = std::getenv("XDG_STATE_HOME"); asked != nullptr && *asked != 0)
    return fs::path{asked} / "yardwright";
  const char* home = std::getenv("HOME");
  return fs::path{home != nullptr ? home : "."} / ".local" / "state" / "yardwright";
}

Expected<Session> open_yard(const fs::path& file, const fs::path& state) {
  auto site = load_site(file);
  if (!site) return tl::unexpected{site.error()};
  Session session = session_of(std::move(*site), file);
  bring_back_autosave(session, state);
  remember_recent(file, state);
  return session;
}

Session new_yard(Site site, const fs::path& state) {
  Session session = session_of(std::move(site));
  bring_back_autosave(session, state);
  return session;
}

tl::expected<void, Problems> save_yard(Session& session, const fs::path& file, const fs::path& state) {
  session.history.keep_proposal();
  if (session.file && *session.file != file) {
    auto moved = with_pictures_beside(session.history.settled(), *session.file, file);
    if (!moved) return tl::unexpected{moved.error()};
    session.history.add_step(std::move(*moved));
  }
  if (auto saved = save_site(session.history.settled(), file); !saved) return saved;
  keep_saved_pictures(session, file);
  forget_autosave(session, state);
  session.saved = session.history.settled();
  session.file = file;
  remember_recent(file, state);
  return {};
}

tl::expected<void, Problems> autosave(const Session& session, const fs::path& state) {
  if (!session.is_changed()) return {};
  const fs::path kept = autosave_of(session.file, state);
  std::error_code failed;
  fs::create_directories(kept.parent_path(), failed);
  if (failed)
    return refused("the autosave folder cannot be made: " + failed.message(), kept.parent_path().string(),
                   "save the yard yourself");
  return save_site(session.history.settled(), kept);
}

void forget_autosave(const Session& session, const fs::path& state) {
  std::error_code none;
  fs::remove(autosave_of(session.file, state), none);
}

std::vector<fs::path> recent_files(const fs::path& state) {
  std::vector<fs::path> files = listed(state);
  std::erase_if(files, [](const fs::path& file) {
    std::error_code none;
    return !fs::exists(file, none);
  });
  return files;
}

void remember_recent(const fs::path& file, const fs::path& state) {
  std::vector<fs::path> files = listed(state);
  const fs::path whole = fs::absolute(file).lexically_normal();
  std::erase(files, whole);
  files.insert(files.begin(), whole);
  std::error_code none;
  fs::create_directories(state, none);
  std::ofstream list{recent_list(state)};
  for (const fs::path& one : files) list << one.string() << '\n';
}

fs::path as_yard_file(fs::path name) {
  if (name.has_filename() && !name.has_extension()) name += ".yard";
  return name;
}

}  // namespace yardwright::session
