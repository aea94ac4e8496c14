// Textures of the pictures that a Drawing carries, kept between frames by their content, so that a hillshade is
// handed to the graphics card once. Lives as long as the window's graphics context.
#pragma once

#include <imgui.h>

#include <SFML/Graphics/Texture.hpp>
#include <list>
#include <memory>

#include "geom/sheet/drawing.hpp"

namespace yardwright::canvas {

class PictureCache {
 public:
  /// Null where the picture is empty or the card cannot take it.
  ImTextureID texture_of(const PictureMark& picture);

 private:
  struct Entry {
    std::uint64_t content = 0;
    std::unique_ptr<sf::Texture> texture;
  };
  std::list<Entry> entries_;
};

}  // namespace yardwright::canvas
