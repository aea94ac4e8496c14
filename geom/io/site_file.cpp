#include "geom/io/site_file.hpp"

#include <fmt/format.h>

#include "geom/io/ground_file.hpp"
#include "geom/io/whole_file.hpp"

namespace yardwright {

namespace {

namespace fs = std::filesystem;

Expected<LevelGrid> levels_beside(const fs::path& site_path, const Site& site) {
  const fs::path file = site_path.parent_path() / site.ground.file;
  if (!stays_in_folder(file)) {
    return refused("is a link out of the folder of the site file", file.string(),
                   "put the file itself beside the site file");
  }
  return load_level_grid(file, site.tie);
}

bool holds(const fs::path& file, const Site& site) {
  if (!fs::exists(file)) return false;
  const auto levels = load_level_grid(file, site.tie);
  return levels && *levels == site.ground.levels;
}

/// The name under which the levels lie, or are to be written: never over a file that this site did not make.
std::string ground_file_name(const Site& site, const fs::path& site_path) {
  const std::string& given = site.ground.file;
  const fs::path folder = site_path.parent_path();
  if (!given.empty() && (!fs::exists(folder / given) || holds(folder / given, site))) return given;
  return site_path.stem().string() + ".ground.tif";
}

tl::expected<void, Problems> save_ground(const Site& site, const fs::path& site_path) {
  const fs::path file = site_path.parent_path() / site.ground.file;
  if (holds(file, site)) return {};
  return save_level_grid(site.ground.levels, site.tie, file);
}

/// A file that could not be read again must not replace one that can.
tl::expected<void, Problems> check_readable(const std::string& text, Site site, const fs::path& path) {
  const auto again = read_site(text, path.filename().string());
  if (!again) return tl::unexpected{again.error()};
  site.ground.levels = {};
  if (*again == site) return {};
  return refused("would not come back as it is", path.string(), "look for names with bytes that are no UTF-8");
}

}  // namespace

Expected<Site> load_site(const fs::path& path) {
  const auto text = read_whole_file(path, most_site_file_bytes);
  if (!text) return tl::unexpected{text.error()};
  auto site = read_site(*text, path.filename().string());
  if (!site || site->ground.file.empty()) return site;
  auto levels = levels_beside(path, *site);
  if (!levels) return tl::unexpected{levels.error()};
  site->ground.levels = std::move(*levels);
  return site;
}

tl::expected<void, Problems> save_site(const Site& site, const fs::path& path) {
  Site saved = site;
  const bool has_levels = !site.ground.levels.empty();
  if (has_levels && (site.ground.file.empty() || is_plain_file_name(site.ground.file))) {
    saved.ground.file = ground_file_name(site, path);
  }
  const std::string text = write_site(saved);
  if (const auto readable = check_readable(text, saved, path); !readable) return readable;
  if (has_levels) {
    if (const auto ground = save_ground(saved, path); !ground) return ground;
  }
  return write_whole_file(path, text);
}

}  // namespace yardwright
