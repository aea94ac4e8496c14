#include "geom/sheet/site_pictures.hpp"

#include "geom/io/picture_file.hpp"
#include "geom/io/whole_file.hpp"

namespace yardwright {

Expected<Pixels> read_site_picture(const std::string& name, const std::filesystem::path& site_file) {
  if (name.empty()) return refused("names no file", "the picture", "choose its file");
  const std::filesystem::path file = site_file.parent_path() / name;
  if (!is_plain_file_name(name) || !stays_in_folder(file)) {
    return refused("lies outside the folder of the site file", name, "put the picture itself beside the site file");
  }
  return read_pixels(file);
}

SitePictures read_site_pictures(const Site& site, const std::filesystem::path& site_file) {
  SitePictures read;
  for_each<Picture>(site, [&](const Item& item, const Picture& picture) {
    auto pixels = read_site_picture(picture.file, site_file);
    if (pixels)
      read.pictures.push_back({item.id, std::move(*pixels)});
    else
      read.problems.insert(read.problems.end(), pixels.error().begin(), pixels.error().end());
  });
  return read;
}

}  // namespace yardwright
