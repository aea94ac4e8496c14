#include "geom/sheet/sheet_file.hpp"

#include <algorithm>
#include <cctype>

#include "geom/io/whole_file.hpp"
#include "geom/sheet/cairo_device.hpp"

namespace yardwright {

namespace {

std::string ending_of(const std::filesystem::path& path) {
  std::string ending = path.extension().string();
  std::ranges::transform(ending, ending.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return ending;
}

tl::expected<void, Problems> write_bytes(const Expected<std::string>& bytes, const std::filesystem::path& path) {
  if (!bytes) return tl::unexpected{bytes.error()};
  return write_whole_file(path, *bytes);
}

}  // namespace

std::filesystem::path path_of_page(const std::filesystem::path& path, std::size_t number) {
  if (number == 1) return path;
  return path.parent_path() / (path.stem().string() + "-" + std::to_string(number) + path.extension().string());
}

Expected<std::vector<std::filesystem::path>> write_pages(const std::vector<Page>& pages,
                                                         const std::filesystem::path& path, const std::string& title) {
  const std::string ending = ending_of(path);
  std::vector<std::filesystem::path> written;
  if (ending == ".pdf") {
    if (const auto done = write_bytes(pdf_of(pages, title), path); !done) return tl::unexpected{done.error()};
    return std::vector{path};
  }
  if (ending != ".svg" && ending != ".png") {
    return refused("a sheet cannot be written as \"" + ending + "\"", path.string(),
                   "end its name in .pdf, .svg or .png");
  }
  for (std::size_t i = 0; i < pages.size(); ++i) {
    const auto file = path_of_page(path, i + 1);
    const auto bytes = ending == ".svg" ? svg_of(pages[i]) : png_of(pages[i], picture_dots_per_inch);
    if (const auto done = write_bytes(bytes, file); !done) return tl::unexpected{done.error()};
    written.push_back(file);
  }
  return written;
}

}  // namespace yardwright
