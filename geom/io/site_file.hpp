// The site file, NAME.yard: JSON with one item a line, in a stable order, its numbers as they were typed in the
// file's own units. The levels of the ground lie beside it in a GeoTIFF. A file with anything wrong in it is
// refused with all that is wrong. Format: docs/format.md, docs/yard.schema.json.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "geom/site/site.hpp"
#include "geom/units/problem.hpp"

namespace yardwright {

/// The version of the format that is written; older ones are read, newer ones refused.
inline constexpr int site_file_version = 1;
inline constexpr std::size_t most_site_file_bytes = 64u << 20;

/// `name` stands for the file in the problems. The levels of the ground are not read.
Expected<Site> read_site(std::string_view text, std::string_view name);
/// read_site gives back exactly `site`, less the levels of its ground.
std::string write_site(const Site& site);

/// With the levels of its ground.
Expected<Site> load_site(const std::filesystem::path& path);
/// Replaces the file at once or not at all, and never by one that could not be read again. The levels are written
/// where they are missing or have changed: under the ground's own file name where that is free, else as
/// NAME.ground.tif.
tl::expected<void, Problems> save_site(const Site& site, const std::filesystem::path& path);

}  // namespace yardwright
