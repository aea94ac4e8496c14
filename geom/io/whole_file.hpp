// Files as wholes: read with a bound on their size, and written so that a reader or a power cut sees either the
// old file or the new one, never a half.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "geom/units/problem.hpp"

namespace yardwright {

Expected<std::string> read_whole_file(const std::filesystem::path& path, std::size_t most_bytes);

/// Through a temporary file in the same folder, flushed to the disk and renamed.
tl::expected<void, Problems> write_whole_file(const std::filesystem::path& path, std::string_view text);

/// A fresh name beside `path`, for a file that will be renamed to it.
std::filesystem::path temporary_beside(const std::filesystem::path& path);
/// Flushes a finished temporary file to the disk and puts it in the place of `path`; removes it where that fails.
tl::expected<void, Problems> put_in_place(const std::filesystem::path& temporary, const std::filesystem::path& path);

/// A name without folders, drive letters or control characters: all that a site file may name.
bool is_plain_file_name(std::string_view name);
/// False for a link that leads out of its folder, though its name is plain.
bool stays_in_folder(const std::filesystem::path& file);

}  // namespace yardwright
