#include "geom/io/whole_file.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fstream>

namespace yardwright {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t longest_name = 200;

tl::unexpected<Problems> not_written(const fs::path& path) {
  return refused(fmt::format("cannot be written: {}", std::strerror(errno)), path.string(),
                 "check that the folder exists, may be written to and has room");
}

/// A rename is safe from a power cut only once the folder itself is on the disk. Some file systems cannot flush
/// a folder; the rename has happened all the same, so that is no failure.
void flush_folder(const fs::path& folder) {
  const int opened = ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (opened < 0) return;
  ::fsync(opened);
  ::close(opened);
}

bool flush_file(const fs::path& path) {
  const int opened = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (opened < 0) return false;
  const bool flushed = ::fsync(opened) == 0;
  return ::close(opened) == 0 && flushed;
}

/// What a save keeps of the file that it replaces: who may read and write it.
void copy_permissions(const fs::path& from, const fs::path& to) {
  std::error_code ignored;
  const fs::file_status status = fs::status(from, ignored);
  if (fs::exists(status)) fs::permissions(to, status.permissions(), ignored);
}

/// A file that is known by a link is written where it lies, and the link stays.
fs::path behind_links(const fs::path& path) {
  std::error_code error;
  const fs::path real = fs::is_symlink(path, error) ? fs::weakly_canonical(path, error) : path;
  return error || real.empty() ? path : real;
}

}  // namespace

Expected<std::string> read_whole_file(const fs::path& path, std::size_t most_bytes) {
  std::error_code error;
  if (!fs::is_regular_file(path, error))
    return refused("is no file that can be read", path.string(), "check its name and folder");
  const std::uintmax_t size = fs::file_size(path, error);
  if (error || size > most_bytes) {
    return refused(fmt::format("is larger than {} MB", most_bytes >> 20), path.string(), "give a smaller file");
  }
  std::string text(static_cast<std::size_t>(size), '\0');
  std::ifstream file{path, std::ios::binary};
  file.read(text.data(), static_cast<std::streamsize>(text.size()));
  if (!file) return refused("cannot be read", path.string(), "check that you may read it");
  return text;
}

fs::path temporary_beside(const fs::path& path) {
  fs::path temporary;
  for (int number = 0; number == 0 || fs::exists(fs::symlink_status(temporary)); ++number) {
    temporary = path.parent_path() / fmt::format(".{}.{}-{}.part", path.filename().string(), ::getpid(), number);
  }
  return temporary;
}

tl::expected<void, Problems> put_in_place(const fs::path& temporary, const fs::path& path) {
  copy_permissions(path, temporary);
  if (!flush_file(temporary) || std::rename(temporary.c_str(), path.c_str()) != 0) {
    const auto problem = not_written(path);
    std::error_code ignored;
    fs::remove(temporary, ignored);
    return problem;
  }
  flush_folder(path.parent_path());
  return {};
}

tl::expected<void, Problems> write_whole_file(const fs::path& named, std::string_view text) {
  const fs::path path = behind_links(named);
  const fs::path temporary = temporary_beside(path);
  {
    std::ofstream file{temporary, std::ios::binary | std::ios::trunc};
    file.write(text.data(), static_cast<std::streamsize>(text.size()));
    file.flush();
    if (!file) {
      const auto problem = not_written(path);
      std::error_code ignored;
      fs::remove(temporary, ignored);
      return problem;
    }
  }
  return put_in_place(temporary, path);
}

bool is_plain_file_name(std::string_view name) {
  const auto forbidden = [](unsigned char c) { return c < 0x20 || c == 0x7f || c == '/' || c == '\\' || c == ':'; };
  return !name.empty() && name.size() <= longest_name && name != "." && name != ".." &&
         std::ranges::none_of(name, forbidden);
}

bool stays_in_folder(const fs::path& file) {
  std::error_code error;
  const fs::path real = fs::canonical(file, error);
  return error || real.parent_path() == fs::canonical(file.parent_path().empty() ? "." : file.parent_path(), error);
}

}  // namespace yardwright
