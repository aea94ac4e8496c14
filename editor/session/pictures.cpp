#include "editor/session/pictures.hpp"

#include "geom/io/picture_file.hpp"
#include "geom/sheet/site_pictures.hpp"
#include "geom/site/edit.hpp"

namespace yardwright::session {

namespace fs = std::filesystem;

std::string HeldPictures::read(const Site& site, const std::optional<fs::path>& site_file) {
  const fs::path folder = site_file ? site_file->parent_path() : fs::path{};
  if (folder != folder_) held_.clear();
  folder_ = folder;
  std::string told;
  for_each<Picture>(site, [&](const Item&, const Picture& picture) {
    if (!site_file || picture.file.empty() || held_.contains(picture.file)) return;
    const auto pixels = read_site_picture(picture.file, *site_file);
    held_[picture.file] = pixels.value_or(Pixels{});
    if (!pixels) told = sentence(pixels.error().front());
  });
  return told;
}

std::vector<PicturePixels> HeldPictures::of(const Site& site) const {
  std::vector<PicturePixels> pictures;
  for_each<Picture>(site, [&](const Item& item, const Picture& picture) {
    const auto held = held_.find(picture.file);
    if (held != held_.end() && !held->second.empty()) pictures.push_back({item.id, held->second});
  });
  return pictures;
}

Expected<Site> with_pictures_beside(Site site, const fs::path& from_site_file, const fs::path& to_site_file) {
  for (Item& item : site.items) {
    Picture* picture = std::get_if<Picture>(&item.thing);
    std::error_code none;
    if (picture == nullptr || !fs::exists(from_site_file.parent_path() / picture->file, none))
      continue;  // was missing before
    auto name = bring_beside(from_site_file.parent_path() / picture->file, to_site_file);
    if (!name) return tl::unexpected{name.error()};
    picture->file = std::move(*name);
  }
  return site;
}

}  // namespace yardwright::session
