#include "editor/canvas/picture_cache.hpp"

#include <algorithm>

namespace yardwright::canvas {

namespace {

constexpr std::size_t most_textures = 24;

/// FNV-1a over a few thousand samples: a picture that changes changes everywhere.
std::uint64_t content_of(const Pixels& pixels) {
  std::uint64_t hash = 1469598103934665603ULL;
  const auto mix = [&hash](std::uint64_t value) { hash = (hash ^ value) * 1099511628211ULL; };
  mix(static_cast<std::uint64_t>(pixels.width_px()));
  mix(static_cast<std::uint64_t>(pixels.height_px()));
  const auto colours = pixels.colours();
  const std::size_t step = std::max<std::size_t>(1, colours.size() / 4096);
  for (std::size_t i = 0; i < colours.size(); i += step) mix(colours[i]);
  return hash;
}

ImTextureID handle_of(const sf::Texture& texture) {
  return reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(texture.getNativeHandle()));
}

}  // namespace

ImTextureID PictureCache::texture_of(const PictureMark& picture) {
  const Pixels& pixels = picture.pixels;
  if (pixels.empty()) return nullptr;
  const std::uint64_t content = content_of(pixels);
  for (const Entry& entry : entries_) {
    if (entry.content == content) return handle_of(*entry.texture);
  }
  auto texture = std::make_unique<sf::Texture>();
  if (!texture->create(static_cast<unsigned>(pixels.width_px()), static_cast<unsigned>(pixels.height_px())))
    return nullptr;
  texture->update(reinterpret_cast<const sf::Uint8*>(pixels.colours().data()));
  texture->setSmooth(true);
  entries_.push_front({content, std::move(texture)});
  if (entries_.size() > most_textures) entries_.pop_back();
  return handle_of(*entries_.front().texture);
}

}  // namespace yardwright::canvas
