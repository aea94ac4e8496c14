#include "editor/session/pictures.hpp"

#include <algorithm>

#include "geom/io/picture_file.hpp"
#include "geom/sheet/site_pictures.hpp"
#include "geom/site/edit.hpp"

namespace yardwright::session {

namespace fs = std::filesystem;

namespace {

bool is_ready(const std::future<Expected<Pixels>>& one) {
  return one.wait_for(std::chrono::seconds{0}) == std::future_status::ready;
}

}  // namespace

void HeldPictures::forget() {
  held_.clear();
  for (auto& [name, one] : coming_) left_.push_back(std::move(one));
  coming_.clear();
}

std::string HeldPictures::take_up() {
  std::string told;
  std::erase_if(left_, is_ready);
  for (auto at = coming_.begin(); at != coming_.end();) {
    if (!is_ready(at->second)) {
      ++at;
      continue;
    }
    const auto pixels = at->second.get();
    held_[at->first] = pixels.value_or(Pixels{});
    if (!pixels) told = sentence(pixels.error().front());
    at = coming_.erase(at);
  }
  return told;
}

std::string HeldPictures::read(const Site& site, const std::optional<fs::path>& site_file) {
  const fs::path folder = site_file ? site_file->parent_path() : fs::path{};
  if (folder != folder_) forget();
  folder_ = folder;
  for_each<Picture>(site, [&](const Item&, const Picture& picture) {
    const std::string& name = picture.file;
    if (!site_file || name.empty() || held_.contains(name) || coming_.contains(name)) return;
    coming_[name] = std::async(std::launch::async, [name, file = *site_file] { return read_site_picture(name, file); });
  });
  return take_up();
}

bool HeldPictures::has_news() const {
  return std::ranges::any_of(coming_, [](const auto& named) { return is_ready(named.second); });
}

void keep_saved_pictures(Session& session, const fs::path& site_file) {
  std::erase_if(session.brought, [&](const std::shared_ptr<BroughtCopy>& copy) {
    bool is_named = false;
    for_each<Picture>(session.history.settled(), [&](const Item&, const Picture& picture) {
      is_named = is_named || site_file.parent_path() / picture.file == copy->file();
    });
    if (is_named) copy->keep();
    return is_named;
  });
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
    auto beside = bring_beside(from_site_file.parent_path() / picture->file, to_site_file);
    if (!beside) return tl::unexpected{beside.error()};
    picture->file = std::move(beside->name);
  }
  return site;
}

}  // namespace yardwright::session
